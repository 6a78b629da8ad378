namespace FleetTrend.Trends.DueLooks;

/// <summary>Why locations have not been looked at since their last look.</summary>
public enum DueReason
{
    /// <summary>No inspection came since.</summary>
    NoInspection = 1,

    /// <summary>The newest inspection that has a line for them says that they could not be examined.</summary>
    CouldNotExamine = 2,

    /// <summary>The newest inspection that has a line for them says that they were not examined.</summary>
    NotExamined = 3,

    /// <summary>Inspections came since, and none has a line for them.</summary>
    NotMentioned = 4,
}
