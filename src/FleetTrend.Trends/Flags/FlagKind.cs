namespace FleetTrend.Trends.Flags;

/// <summary>What a flag says.</summary>
public enum FlagKind
{
    /// <summary>An aircraft gets worse in a condition; of an earlier version, it had more of it than its like.</summary>
    AirframeDrift = 1,

    /// <summary>Of an earlier version: a condition comes back at one location of one aircraft more often than at the same location of similar
    /// aircraft.</summary>
    RepeatLocation = 2,

    /// <summary>
    /// A kind of part fails early more often, or half of them fail sooner, at one base than at the others; or more of them fail there than did.
    /// </summary>
    BasePartLife = 3,

    /// <summary>On an aircraft more parts of a kind fail than did.</summary>
    AirframePartDrift = 4,

    /// <summary>The aircraft of a base get worse in a condition.</summary>
    BaseDrift = 5,
}
