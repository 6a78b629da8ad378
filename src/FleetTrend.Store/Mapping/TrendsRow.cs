namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>trends</c>.</summary>
internal sealed class TrendsRow
{
    public DateTimeOffset AsOf { get; set; }

    public string CodeVersion { get; set; } = "";

    public string ParametersJson { get; set; } = "";

    public long[] SetIds { get; set; } = [];

    public string FleetJson { get; set; } = "";

    /// <summary>False where only headline figures are still kept, or none.</summary>
    public bool IsWhole { get; set; } = true;
}
