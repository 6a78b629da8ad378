namespace FleetTrend.Trends.Repairs;

/// <summary>What a comparison of two actions found.</summary>
public enum RepairFinding
{
    /// <summary>Too little came back to compare.</summary>
    NotCompared = 0,

    /// <summary>Compared, and no difference shown. It may still be there.</summary>
    NoneShown = 1,

    /// <summary>The first holds longer.</summary>
    HoldsLonger = 2,
}
