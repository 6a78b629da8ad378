namespace FleetTrend.Observations.DataProblems;

/// <summary>Kinds of problem in the records of an aircraft.</summary>
public enum DataProblemKind
{
    /// <summary>Hours go backwards without a meter change.</summary>
    HoursBackwards = 1,

    /// <summary>More than 24 h flown per day.</summary>
    TooManyHoursPerDay = 2,

    /// <summary>Hours of a visit disagree with the readings by more than 10 h, or records of one day with each other by more than 0.1 h.</summary>
    HoursDisagreeWithReadings = 3,

    /// <summary>A finding was followed by a good look without any action recorded.</summary>
    ActionNotRecorded = 4,

    /// <summary>A removal at a location where another part was installed, or an installation over a part that was not removed.</summary>
    InstallationMismatch = 5,

    /// <summary>Two sources describe the aircraft differently.</summary>
    SourcesDisagree = 6,

    /// <summary>A record is about a location that the aircraft's layout does not have on that day.</summary>
    LocationNotInLayout = 7,

    /// <summary>A record is dated after the aircraft left the fleet.</summary>
    AfterRetirement = 8,

    /// <summary>A record is dated after the as-of day.</summary>
    InTheFuture = 9,

    /// <summary>A part with a serial number is recorded in two places at once, or its hours do not carry over.</summary>
    SerialNumberConflict = 10,
}
