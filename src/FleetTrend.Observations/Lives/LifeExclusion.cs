namespace FleetTrend.Observations.Lives;

/// <summary>Why a life takes no part in a life fit; the report says how many such lives there are.</summary>
public enum LifeExclusion
{
    /// <summary>Its age is not known.</summary>
    AgeUnknown = 1,

    /// <summary>It was found failed at the first look with no watched start before: it failed before observation began.</summary>
    FailedBeforeEntry = 2,

    /// <summary>It was never looked at.</summary>
    NeverExamined = 3,

    /// <summary>It was found failed with no hours flown since it came under observation, so that (LastGood, FirstBad] is empty.</summary>
    NoHours = 4,
}
