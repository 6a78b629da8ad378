using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;

namespace FleetTrend.Observations.Timelines;

/// <summary>A finding that a person has merged into another: it counts as seen again at the look of the one that stands.</summary>
internal sealed record MergedFinding(Recorded<Finding> Merged, Recorded<Finding> Kept)
{
    /// <summary>
    /// The merges that hold for these findings, ordered by date and key of the merged one. A merge into a finding that was itself
    /// merged leads to where that one went. Where the two cannot be one event any more, the problem is listed and both count.
    /// </summary>
    public static IReadOnlyList<MergedFinding> Select(
        string registration, IReadOnlyList<FindingMerge> merges, IReadOnlyList<Recorded<Finding>> findings, List<DataProblem> problems)
    {
        if (merges.Count == 0)
            return [];
        var keptOf = merges.ToDictionary(m => (m.MergedSource, m.MergedRecordId), m => (m.KeptSource, m.KeptRecordId));
        var known = findings.ToDictionary(f => (f.Key.Source, f.Key.SourceRecordId));
        var held = new List<MergedFinding>();
        foreach (var finding in findings)
        {
            if (!keptOf.TryGetValue((finding.Key.Source, finding.Key.SourceRecordId), out var keptName))
                continue;
            // The store refuses circles; the count keeps a damaged table from hanging a refresh.
            for (var steps = 0; steps < keptOf.Count && keptOf.TryGetValue(keptName, out var next); steps++)
                keptName = next;
            var kept = known.GetValueOrDefault(keptName);
            if (kept is not null && kept.Content.Location == finding.Content.Location && kept.Content.Condition == finding.Content.Condition)
                held.Add(new MergedFinding(finding, kept));
            else
                problems.Add(DoesNotFit(registration, finding, kept, $"{keptName.KeptSource} {ForeignText.Identifier(keptName.KeptRecordId)}"));
        }

        return held;
    }

    private static DataProblem DoesNotFit(string registration, Recorded<Finding> finding, Recorded<Finding>? kept, string keptName)
    {
        var why = kept is null
            ? "is not there any more"
            : $"is now {kept.Content.Condition} at {kept.Content.Location}, and this one {finding.Content.Condition} at {finding.Content.Location}";
        return new DataProblem(
            DataProblemKind.MergeDoesNotFit,
            registration,
            finding.Content.FoundDate,
            $"{finding.Key.Source} {ForeignText.Identifier(finding.Key.SourceRecordId)} was merged into {keptName}, which {why}; each counts by itself.",
            kept is null ? [finding.Key] : [finding.Key, kept.Key])
        {
            Subject = [finding.Key],
        };
    }
}
