namespace FleetTrend.Trends.PartNumbers;

/// <summary>What a comparison of two part numbers found.</summary>
public enum PartNumberFinding
{
    /// <summary>Too few failed to compare.</summary>
    NotCompared = 0,

    /// <summary>Compared, and no difference shown. It may still be there.</summary>
    NoneShown = 1,

    /// <summary>The one is better by this measure.</summary>
    Better = 2,
}
