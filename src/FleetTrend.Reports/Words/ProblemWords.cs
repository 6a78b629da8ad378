using FleetTrend.Observations.DataProblems;

namespace FleetTrend.Reports.Words;

/// <summary>Kinds of data problem in words, and what they do to the numbers.</summary>
public static class ProblemWords
{
    /// <summary>What is wrong.</summary>
    public static string Of(DataProblemKind kind) => kind switch
    {
        DataProblemKind.HoursBackwards => "Hours go backwards without a meter change",
        DataProblemKind.TooManyHoursPerDay => "More than 24 h flown in a day",
        DataProblemKind.HoursDisagreeWithReadings => "Hours of a visit disagree with the meter readings",
        DataProblemKind.ActionNotRecorded => "A finding later seen good, with no action recorded",
        DataProblemKind.InstallationMismatch => "Part installed or removed where the records say otherwise",
        DataProblemKind.SourcesDisagree => "Two sources describe the aircraft differently",
        DataProblemKind.LocationNotInLayout => "Record at a location that the aircraft does not have",
        DataProblemKind.AfterRetirement => "Record dated after the aircraft left the fleet",
        DataProblemKind.InTheFuture => "Record dated in the future",
        DataProblemKind.SerialNumberConflict => "One serial number in two places, or its hours do not carry over",
        DataProblemKind.LookAlikeMarks => "Two registration marks easily taken for each other",
        DataProblemKind.MeterChangeMismatch => "Meter change that does not fit the readings",
        DataProblemKind.PossibleDuplicate => "One condition recorded by two sources, perhaps one event",
        DataProblemKind.MergeDoesNotFit => "Findings merged into one event that no longer fit each other",
        DataProblemKind.RetractionWithoutRecord => "Record taken back that never came",
        _ => "Other problem",
    };

    /// <summary>Why it matters for the numbers.</summary>
    public static string Matters(DataProblemKind kind) => kind switch
    {
        DataProblemKind.HoursBackwards or DataProblemKind.TooManyHoursPerDay or DataProblemKind.HoursDisagreeWithReadings
            or DataProblemKind.MeterChangeMismatch => "Rates and lives rest on hours.",
        DataProblemKind.ActionNotRecorded => "Without the action, a crack that came back looks like the old one.",
        DataProblemKind.InstallationMismatch or DataProblemKind.SerialNumberConflict => "Part lives start and end at installations.",
        DataProblemKind.LookAlikeMarks => "Hours and findings of one aircraft may stand under the other.",
        DataProblemKind.PossibleDuplicate or DataProblemKind.MergeDoesNotFit => "A crack that is told twice counts twice.",
        DataProblemKind.RetractionWithoutRecord => "A mistyped identifier leaves the wrong record counting.",
        DataProblemKind.LocationNotInLayout => "The record takes part in no number.",
        _ => "Ask the source which is right.",
    };
}
