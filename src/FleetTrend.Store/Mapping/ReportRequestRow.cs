namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>report_requests</c>.</summary>
internal sealed class ReportRequestRow
{
    public string RequestId { get; set; } = "";

    public DateTimeOffset RequestTime { get; set; }

    public DateTimeOffset? LeaseEndTime { get; set; }

    public DateTimeOffset? DoneTime { get; set; }
}
