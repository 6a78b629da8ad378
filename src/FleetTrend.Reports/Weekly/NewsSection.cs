using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;

namespace FleetTrend.Reports.Weekly;

/// <summary>What is new this week, in a few bullets.</summary>
internal static class NewsSection
{
    private const int MostFlags = 6;
    private const int MostTails = 6;

    public static ReportSection Compose(ReportDraft draft, DataProblemsSection problems)
    {
        List<Line> items = [.. FlagItems(draft)];
        items.AddRange(EventItems(draft));
        if (InspectionItem(draft) is { } inspections) items.Add(inspections);
        if (problems.NewCount > 0)
        {
            items.Add($"{NumberWords.Count(problems.NewCount, "new data problem", "new data problems")} in the records, listed below.");
        }

        if (draft.Previous is null) items.Add("This is the first report for this scope: there is no earlier one to compare with.");
        return new ReportSection("news", "New this week", [new Block.Bullets(items)]);
    }

    private static IEnumerable<Line> FlagItems(ReportDraft draft)
    {
        var fresh = draft.Flags.Where(f => f.State == FlagLineState.New && f.Flag.Tier == FlagTier.Flag).ToList();
        var watched = draft.Flags.Count(f => f.State == FlagLineState.New && f.Flag.Tier == FlagTier.Watch);
        if (fresh.Count == 0) yield return "No new flags.";
        foreach (var line in fresh.Take(MostFlags))
            yield return Line.Join(new Run.Strong(FirstLetter.Capital(FlagHeadline.Format(line.Flag))), ".");
        if (fresh.Count > MostFlags) yield return $"{fresh.Count - MostFlags} more new flags, below.";
        if (watched > 0) yield return $"{NumberWords.Count(watched, "new watch", "new watches")}: less sure than a flag, below.";
        var open = draft.Flags.Count(f => f.State == FlagLineState.Open);
        var acknowledged = draft.Flags.Count(f => f.State == FlagLineState.Acknowledged);
        List<string> earlier = [];
        if (open > 0) earlier.Add($"{NumberWords.Count(open, "flag", "flags")} that nobody has acknowledged");
        if (acknowledged > 0) earlier.Add($"{NumberWords.Count(acknowledged, "flag", "flags")} acknowledged and not closed");
        if (earlier.Count > 0) yield return $"From earlier weeks: {string.Join(", ", earlier)}.";

        var quiet = draft.Flags.Count(f => f.State != FlagLineState.New && !IsProposed(draft.Current, f));
        if (quiet > 0)
            yield return $"Of these, {quiet} would not be raised on this week's numbers: check whether the work done explains it.";
    }

    private static bool IsProposed(TrendSnapshot snapshot, FlagLine line) => snapshot.Flags.Any(f => f.Subject == line.Flag.Subject);

    private static IEnumerable<Line> EventItems(ReportDraft draft)
    {
        if (draft.Previous is not { } previous) yield break;
        var before = previous.Fleet.ToDictionary(l => l.Registration, l => l.Events, StringComparer.Ordinal);
        // Counts of an earlier version are not there to compare with.
        if (before.Values.Any(e => e is null)) yield break;
        var changes = draft.Current.Fleet
            .Where(l => draft.Scope.Covers(l.Base))
            .SelectMany(l => (l.Events ?? []).Select(e => (l.Registration, e.Condition, More: e.Count - Before(l.Registration, e.Condition))))
            .Where(c => c.More > 0)
            .ToList();
        if (changes.Count == 0)
        {
            yield return $"No new events in the records since the report before ({NumberWords.Moment(previous.AsOf)}).";
            yield break;
        }

        var kinds = changes.GroupBy(c => c.Condition).OrderBy(g => g.Key)
            .Select(g => ConditionWords.Count(g.Sum(c => c.More), g.Key));
        var tails = changes.GroupBy(c => c.Registration, StringComparer.Ordinal)
            .Select(g => (Tail: g.Key, More: g.Sum(c => c.More)))
            .OrderByDescending(t => t.More).ThenBy(t => t.Tail, StringComparer.Ordinal).ToList();
        var named = string.Join(", ", tails.Take(MostTails).Select(t => $"{t.Tail} ({t.More})"));
        var rest = tails.Count > MostTails ? $" and {tails.Count - MostTails} more aircraft" : string.Empty;
        yield return $"New in the records since {NumberWords.Moment(previous.AsOf)}: {string.Join(", ", kinds)}, on {named}{rest}.";

        int Before(string registration, Condition condition) =>
            before.GetValueOrDefault(registration)?.FirstOrDefault(e => e.Condition == condition)?.Count ?? 0;
    }

    private static Line? InspectionItem(ReportDraft draft)
    {
        if (draft.Fleet.Count == 0) return null;
        var looked = draft.Fleet.Count(l => l.LatestInspectionDate is { } date && draft.Inputs.Period.Contains(date));
        var never = draft.Fleet.Count(l => l.LatestInspectionDate is null);
        var text = $"{looked} of {NumberWords.Count(draft.Fleet.Count, "aircraft", "aircraft")} had an inspection in these days";
        return never > 0 ? $"{text}; {never} have none on record." : text + ".";
    }
}
