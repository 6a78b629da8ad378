namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>result_sets</c>.</summary>
internal sealed class ResultSetRow
{
    public long Id { get; set; }

    public DateTimeOffset AsOf { get; set; }

    public string TypeGroup { get; set; } = "";

    public string SummaryJson { get; set; } = "";
}
