namespace FleetTrend.Synthetic;

/// <summary>What should come of what was planted.</summary>
public enum PlantedAnswer
{
    /// <summary>A flag of the aircraft, or of the base and kind of part.</summary>
    Flag = 1,

    /// <summary>A flag of the aircraft, about which something was done, and the verdict that it helped.</summary>
    ActionHelped = 2,

    /// <summary>The verdict that a practice change helped.</summary>
    PracticeHelped = 3,

    /// <summary>A question whether the aircraft is looked at closely.</summary>
    Asked = 4,

    /// <summary>No flag: it always was so.</summary>
    NotCalled = 5,
}
