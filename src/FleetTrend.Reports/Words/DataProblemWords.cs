using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Sources;

namespace FleetTrend.Reports.Words;

/// <summary>Kinds of data problem in words, and what they do to the numbers.</summary>
public static class DataProblemWords
{
    /// <summary>What is wrong.</summary>
    public static string Name(DataProblemKind kind) => kind switch
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
        DataProblemKind.TakenOutGoodWithFinding => "Part found failed and taken out as examined good",
        DataProblemKind.OpenFindingNotMentioned => "Open finding that a later look does not mention",
        _ => "Other problem",
    };

    /// <summary>
    /// What is wrong, as the refresh that saw it wrote it. Those of an earlier version have the reason of a retraction unquoted; it is
    /// quoted here.
    /// </summary>
    /// <param name="kind">What kind of problem.</param>
    /// <param name="evidence">The records that it concerns.</param>
    /// <param name="description">As stored.</param>
    public static string Description(DataProblemKind kind, IReadOnlyList<RecordKey> evidence, string description)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(description);
        if (kind != DataProblemKind.RetractionWithoutRecord || evidence.Count == 0)
            return description;
        var unquoted = $"{evidence[0].Source} took back {evidence[0].SourceRecordId}, which it never sent: ";
        return description.StartsWith(unquoted, StringComparison.Ordinal)
            ? RetractionSentence.Write(evidence[0], description[unquoted.Length..])
            : description;
    }

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
        DataProblemKind.TakenOutGoodWithFinding => "The part counts as failed; if it was good, lives come out too short.",
        DataProblemKind.OpenFindingNotMentioned => "Either a repair was not recorded, or the look missed it.",
        DataProblemKind.LocationNotInLayout => "The record takes part in no number.",
        _ => "Ask the source which is right.",
    };
}
