namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>report_requests</c>.</summary>
internal sealed class ReportRequestRow
{
    public string RequestId { get; set; } = "";

    public DateTimeOffset RequestTime { get; set; }

    public DateOnly PeriodStartDate { get; set; }

    public DateOnly PeriodEndDate { get; set; }

    public DateTimeOffset? LeaseEndTime { get; set; }

    /// <summary>When it was done or had failed; null before.</summary>
    public DateTimeOffset? DoneTime { get; set; }

    /// <summary>Attempts that have ended.</summary>
    public int AttemptCount { get; set; }

    /// <summary>Why the latest attempt failed; null where none did, and once it is done.</summary>
    public string? Failure { get; set; }
}
