namespace FleetTrend.Statistics.Recurrences;

/// <summary>What is taken of the levels of units.</summary>
public enum GrowthLevels
{
    /// <summary>Each has its own, which drops out: a unit is compared with itself alone.</summary>
    Own = 0,

    /// <summary>They scatter about one, and not with the clock: units are also compared with each other.</summary>
    Common = 1,
}
