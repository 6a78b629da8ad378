namespace FleetTrend.Trends.Growth;

/// <summary>Which way a kind of place goes.</summary>
public enum GrowthFinding
{
    /// <summary>Too few findings, or on too few aircraft, to tell.</summary>
    NotTold = 0,

    /// <summary>No trend is shown. There may still be one.</summary>
    NoneShown = 1,

    /// <summary>Findings come more and more often.</summary>
    Worse = 2,

    /// <summary>Findings come less and less often.</summary>
    Better = 3,
}
