namespace FleetTrend.Store.Requests;

/// <summary>A request for reports, and what became of it.</summary>
public sealed record StoredReportRequest
{
    /// <summary>The caller's identifier.</summary>
    public required string RequestId { get; init; }

    /// <summary>When it was asked for the first time (UTC).</summary>
    public required DateTimeOffset RequestTime { get; init; }

    /// <summary>First day of the period.</summary>
    public required DateOnly PeriodStart { get; init; }

    /// <summary>Last day of the period.</summary>
    public required DateOnly PeriodEnd { get; init; }

    /// <summary>How far it is.</summary>
    public required ReportRequestState State { get; init; }

    /// <summary>When it was done or had failed (UTC); null before.</summary>
    public DateTimeOffset? EndTime { get; init; }

    /// <summary>Attempts so far that have ended.</summary>
    public int AttemptCount { get; init; }

    /// <summary>Why the latest attempt failed; null where none did, and once it is done.</summary>
    public string? Failure { get; init; }

    /// <summary>The reports of the period that there are, that of the whole fleet last.</summary>
    public IReadOnlyList<RequestedReport> Reports { get; init; } = [];
}
