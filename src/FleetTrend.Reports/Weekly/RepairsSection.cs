using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Repairs;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Whether repairs hold: the few that say something in a report; all of them with their counts on a page.</summary>
public static class RepairsSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;

    // Fewer repairs, or a smaller share come back by 200 h, have nothing to act on in a mail.
    private const int LeastRepairs = 5;
    private const double LeastBack = 1 / 3.0;
    private const string Heading = "Does the repair hold?";

    /// <summary>All repairs of a snapshot with their counts, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.Repairs.Count == 0)
            return new ReportSection("repairs", Heading, [new Block.Paragraph($"No repair of a finding is recorded, {asOf}.")]);
        List<Block> blocks = [new Block.Paragraph(RepairWords.Meaning)];
        var rows = 0;
        var left = snapshot.Repairs.Count;
        foreach (var trend in snapshot.Repairs.TakeWhile(t => (rows += t.Actions.Count) <= MostRows))
        {
            left--;
            blocks.Add(new Block.SubHeading($"{FirstLetter.Capital(LocationWords.Kind(trend.Title, trend.Kind))}, {ConditionWords.Name(trend.Condition)}, {trend.TypeGroup}"));
            blocks.Add(new Block.Paragraph(RepairWords.Verdict(trend)));
            blocks.Add(Counts(trend, asOf));
            if (trend.Comparisons.Any(c => c.PValue is not null))
                blocks.Add(Compared(trend));
        }

        if (left > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(left)} more kinds of location and condition. ListRepairs has all of them.", IsAside: true));
        blocks.Add(new Block.Paragraph($"How it is worked out: {Methods(snapshot)}", IsAside: true));
        return new ReportSection("repairs", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<RepairTrend> told = [.. Covered(draft).Where(IsTold)];
        if (told.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. told.Take(MostLines).Select(t => (Line)RepairWords.Verdict(t))])];
        var rest = told.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(rest > 0 ? $"{NumberWords.Count(rest)} more, with counts" : "The counts behind it", new Uri(pages, "repairs"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("repairs", Heading, blocks);
    }

    /// <summary>Repairs of which one is called to hold longer now and was not in the report before.</summary>
    internal static IReadOnlyList<RepairTrend> NewlyCalled(ReportDraft draft)
    {
        var before = (draft.Previous?.Repairs ?? []).Where(IsCalled).Select(Key).ToHashSet();
        return [.. Covered(draft).Where(t => IsCalled(t) && !before.Contains(Key(t)))];

        static (string TypeGroup, string Kind, Condition Condition) Key(RepairTrend trend) => (trend.TypeGroup, trend.Kind, trend.Condition);
    }

    private static IEnumerable<RepairTrend> Covered(ReportDraft draft)
    {
        var groups = draft.Fleet.Select(l => l.TypeGroup).ToHashSet(StringComparer.Ordinal);
        return draft.Current.Repairs.Where(t => groups.Contains(t.TypeGroup));
    }

    private static bool IsCalled(RepairTrend trend) => trend.Comparisons.Any(c => c.Finding == RepairFinding.HoldsLonger);

    private static bool IsTold(RepairTrend trend) =>
        IsCalled(trend)
        || trend.Actions.Any(a => a.Repairs >= LeastRepairs && a.Shares.Any(s => s.Hours == 200 && s.Known >= LeastBack * a.Repairs));

    private static Block.Table Counts(RepairTrend trend, string asOf) => new(
        $"Come back by so many flight hours, {asOf}. In brackets those known: come back, and of how many it is known. "
            + $"Then the share, with {NumberWords.PercentInFull(trend.Actions[0].Before.Confidence)} limits",
        [
            new("Done"), new("How often", true), new("Aircraft", true), .. trend.Actions[0].Shares.Select(s => new Column($"By {NumberWords.Hours(s.Hours)}", true)),
            new("Before, per 1,000 h", true), new("Not looked at since", true),
        ],
        [.. trend.Actions.Select(a => (Line[])
        [
            FirstLetter.Capital(ActionWords.Done(a.Action)), NumberWords.Count(a.Repairs), NumberWords.Count(a.Aircraft),
            .. a.Shares.Select(s => (Line)Share(s)),
            FigureWords.Format(a.Before, FigureStyle.Count).Estimate, NumberWords.Count(a.NotLookedAt),
        ])]);

    private static string Share(ShareBack share) =>
        $"({NumberWords.Count(share.Known)} of {NumberWords.Count(share.Known + share.Held)}) {FigureWords.Format(share.Share, FigureStyle.Chance).Estimate}";

    private static Block.Table Compared(RepairTrend trend) => new(
        "Compared; p allows for all comparisons of the fleet",
        [new("Comparison"), new("Times", true), new("p", true), new("Verdict")],
        [.. trend.Comparisons.Where(c => c.PValue is not null).Select(c => (Line[])
        [
            FirstLetter.Capital(RepairWords.Compared(c, trend.Condition)),
            c.TimesAsLong is { } times ? FigureWords.Format(times, FigureStyle.Times).Estimate : "",
            c.AdjustedPValue is { } p ? ChanceWords.Named("p", p, PValueLaw.Approximate) : "", RepairWords.Found(c.Finding),
        ])]);

    private static string Methods(TrendSnapshot snapshot) => string.Join("; ", snapshot.Repairs
        .SelectMany(t => t.Actions.SelectMany(a => a.Shares.Select(s => ("share", s.Share.Method)).Append(("before", a.Before.Method)))
            .Concat(t.Comparisons.Select(c => ("times", c.TimesAsLong?.Method ?? ""))))
        .Where(m => m.Item2.Length > 0)
        .Distinct()
        .Select(m => $"{m.Item1}: {m.Item2}")) + ". Few repairs: Fisher 1935, by those known at 200 h. p after Holm 1979.";
}
