namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>snapshots</c>.</summary>
internal sealed class SnapshotRow
{
    public DateTimeOffset AsOf { get; set; }

    public string CodeVersion { get; set; } = "";

    public string ParametersJson { get; set; } = "";

    public string TrendsJson { get; set; } = "";
}
