namespace FleetTrend.Observations.DataProblems;

/// <summary>The rule that a problem breaks, in words.</summary>
public static class ProblemRules
{
    /// <summary>One sentence or two: what holds for records that add up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static string Find(DataProblemKind kind) => kind switch
    {
        DataProblemKind.HoursBackwards =>
            "Time in service never falls. A meter that was replaced or reset is told by a meter change.",
        DataProblemKind.TooManyHoursPerDay =>
            "No aircraft flies more than 24 h in a day.",
        DataProblemKind.HoursDisagreeWithReadings =>
            "Hours of a visit lie within 10 h of what the meter readings around it allow, and records of one day give the same hours to 0.1 h.",
        DataProblemKind.ActionNotRecorded =>
            "A condition goes away by an action only. What was found and is later seen good has an action between.",
        DataProblemKind.InstallationMismatch =>
            "A part comes out of where it was put in, and another goes in after the one before came out.",
        DataProblemKind.SourcesDisagree =>
            "All sources describe an aircraft alike: start of complete records, meter offset, base, type group, the day it left.",
        DataProblemKind.LocationNotInLayout =>
            "A record is about a location that the layout of the aircraft's type group has on that day.",
        DataProblemKind.AfterRetirement =>
            "Nothing is recorded of an aircraft after the day it left the fleet.",
        DataProblemKind.InTheFuture =>
            "A record tells what has happened: it is dated no later than the day it came in, with one day's grace for time zones.",
        DataProblemKind.SerialNumberConflict =>
            "A part with a serial number is in one place at a time and carries its hours with it.",
        DataProblemKind.LookAlikeMarks =>
            "No two aircraft have marks that differ only by O and 0, I and 1, hyphens, or two neighbouring letters swapped.",
        DataProblemKind.MeterChangeMismatch =>
            "The old meter ends at or above its last reading, the new one is read at or above where it started, and neither gains more than 24 h a day.",
        DataProblemKind.PossibleDuplicate =>
            "Two sources that tell of one condition at one location within 3 days and 5 h may have seen one event. A person decides.",
        DataProblemKind.MergeDoesNotFit =>
            "Findings that were merged into one event are both there, at one location and of one condition.",
        DataProblemKind.RetractionWithoutRecord =>
            "What is taken back was sent before, or comes later.",
        DataProblemKind.TakenOutGoodWithFinding =>
            "A part that was found failed is not taken out as examined good, unless an action closed the finding first.",
        DataProblemKind.OpenFindingNotMentioned =>
            "A look at the place of an open finding finds it again, or an action says what was done about it.",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No kind of problem."),
    };
}
