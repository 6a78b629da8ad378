namespace FleetTrend.Trends.LookLists;

/// <summary>Why a location stands out on a look list, the weightiest first. One without a reason is on the list all the same.</summary>
public enum LookReason
{
    /// <summary>A leak or a missing piece is open there.</summary>
    OpenFirst = 1,

    /// <summary>Another finding is open there.</summary>
    Open = 2,

    /// <summary>A call on this aircraft names it.</summary>
    Called = 3,

    /// <summary>Nobody has looked at it since the records begin.</summary>
    NeverLookedAt = 4,

    /// <summary>Its look interval is over.</summary>
    PastInterval = 5,

    /// <summary>What was done there has not been looked at since.</summary>
    NotSeenSinceAction = 6,

    /// <summary>A condition has come back there, on the same part or in the same place.</summary>
    CameBack = 7,

    /// <summary>By the lives of similar parts, its part may well have failed by the next look.</summary>
    MayHaveFailed = 8,
}
