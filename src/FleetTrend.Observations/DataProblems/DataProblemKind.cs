namespace FleetTrend.Observations.DataProblems;

/// <summary>Kinds of problem in the records of an aircraft.</summary>
public enum DataProblemKind
{
    /// <summary>Hours go backwards without a meter change.</summary>
    HoursBackwards = 1,

    /// <summary>More than 24 h flown per day.</summary>
    TooManyHoursPerDay = 2,

    /// <summary>
    /// Hours of a visit disagree with the readings around it by more than 10 h (or by more than 24 h a day and 10 h), or records
    /// of one day with each other by more than 0.1 h.
    /// </summary>
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

    /// <summary>A record is dated after the as-of day, or was accepted more than a day before the day it is dated.</summary>
    InTheFuture = 9,

    /// <summary>A part with a serial number is recorded in two places at once, or its hours do not carry over.</summary>
    SerialNumberConflict = 10,

    /// <summary>Two registration marks that are easily taken for each other: O and 0, I and 1, hyphens, two neighbouring letters swapped.</summary>
    LookAlikeMarks = 11,

    /// <summary>A meter change does not fit the readings, or the other changes, on either side of it.</summary>
    MeterChangeMismatch = 12,

    /// <summary>Two sources may have recorded one event: the same condition at one location within 3 days and 5 h.</summary>
    PossibleDuplicate = 13,

    /// <summary>Two findings were merged by a person, and by later revisions they cannot be one event any more.</summary>
    MergeDoesNotFit = 14,

    /// <summary>A record was taken back that never came.</summary>
    RetractionWithoutRecord = 15,

    /// <summary>
    /// A part with an open finding of a condition that fails it was taken out as examined good, the same day or later. The finding
    /// counts.
    /// </summary>
    TakenOutGoodWithFinding = 16,

    /// <summary>A look examined the place of an open finding and did not mention it. It stays open.</summary>
    OpenFindingNotMentioned = 17,
}
