namespace FleetTrend.Trends.Flags;

/// <summary>What a flag says.</summary>
public enum FlagKind
{
    /// <summary>An aircraft has more events of a condition than its like.</summary>
    AirframeDrift = 1,

    /// <summary>A condition comes back at one location of one aircraft more often than at the same location of its like.</summary>
    RepeatLocation = 2,

    /// <summary>A kind of part fails early more often, or half of them fail sooner, at one base than at the others.</summary>
    BasePartLife = 3,
}
