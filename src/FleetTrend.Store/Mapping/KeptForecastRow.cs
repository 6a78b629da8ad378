namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>kept_forecasts</c>: what an analysis forecast for a type group when it was first published in a quarter, never changed.</summary>
internal sealed class KeptForecastRow
{
    /// <summary>First day of the quarter (UTC).</summary>
    public DateOnly QuarterDate { get; set; }

    public string TypeGroup { get; set; } = "";

    public string Analysis { get; set; } = "";

    public DateTimeOffset AsOf { get; set; }

    /// <summary>The forecasts, in the form of the analysis.</summary>
    public string DetailJson { get; set; } = "";
}
