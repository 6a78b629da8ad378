namespace FleetTrend.Trends.Shrouds;

/// <summary>State of a clamp bolt's hex, by what is open at it: the one that leaves least for a wrench counts.</summary>
public enum HexState
{
    /// <summary>The last look found nothing.</summary>
    Good = 1,

    /// <summary>Corroded.</summary>
    Corroded = 2,

    /// <summary>Worn.</summary>
    Worn = 3,

    /// <summary>Eroded.</summary>
    Eroded = 4,

    /// <summary>Something else is open at it, such as a crack or looseness.</summary>
    OtherFinding = 5,

    /// <summary>Nobody has looked at it.</summary>
    NeverLookedAt = 6,
}
