using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.PartNumbers;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Part numbers of a kind beside each other: what is called in a report; all of them with their counts on a page.</summary>
public static class PartNumbersSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;
    private const string Heading = "Which part number lasts longer?";

    /// <summary>All part numbers of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.PartNumbers.Count == 0)
        {
            return new ReportSection("part-numbers", Heading,
                [new Block.Paragraph($"No installation on record tells a part number, {asOf}. Send them with the installations to see which lasts longer.")]);
        }

        List<Block> blocks = [new Block.Paragraph(PartNumberWords.Meaning)];
        List<PartNumberTrend> compared = [.. snapshot.PartNumbers.Where(t => t.Numbers.Count > 1)];
        var (rows, left) = (0, compared.Count);
        foreach (var trend in compared.TakeWhile(t => (rows += t.Numbers.Count) <= MostRows))
        {
            left--;
            blocks.Add(new Block.SubHeading($"{FirstLetter.Capital(LocationWords.Kind(trend.Title, trend.Kind))}, {trend.TypeGroup}"));
            blocks.Add(new Block.Paragraph(PartNumberWords.Verdict(trend)));
            blocks.Add(Counts(trend, asOf));
            if (trend.Comparisons.Any(c => c.PValue is not null))
                blocks.Add(Compared(trend));
        }

        if (left > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(left)} more kinds of part. ListPartNumbers has all of them.", IsAside: true));
        List<string> alone = [.. snapshot.PartNumbers.Where(t => t.Numbers.Count == 1)
            .Select(t => $"{LocationWords.Kind(t.Title, t.Kind)} of {t.TypeGroup} ({t.Numbers[0].PartNumber})")];
        if (alone.Count > 0)
            blocks.Add(new Block.Paragraph($"One part number alone is on record, {asOf}, so that there is nothing to compare: {string.Join("; ", alone)}."));
        if (compared.Count > 0)
            blocks.Add(new Block.Paragraph($"How it is worked out: {Methods(compared)}", IsAside: true));
        return new ReportSection("part-numbers", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var told = Called(draft);
        if (told.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. told.Take(MostLines).Select(t => (Line)PartNumberWords.Verdict(t))])];
        var rest = told.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(rest > 0 ? $"{NumberWords.Count(rest)} more, with counts" : "The counts behind it", new Uri(pages, "part-numbers"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("part-numbers", Heading, blocks);
    }

    /// <summary>Kinds of part of which one number is called better now and none was in the report before.</summary>
    internal static IReadOnlyList<PartNumberTrend> NewlyCalled(ReportDraft draft)
    {
        var before = (draft.Previous?.PartNumbers ?? []).Where(IsCalled).Select(t => (t.TypeGroup, t.Kind)).ToHashSet();
        return [.. Called(draft).Where(t => !before.Contains((t.TypeGroup, t.Kind)))];
    }

    private static List<PartNumberTrend> Called(ReportDraft draft)
    {
        var groups = draft.Fleet.Select(l => l.TypeGroup).ToHashSet(StringComparer.Ordinal);
        return [.. draft.Current.PartNumbers.Where(t => groups.Contains(t.TypeGroup) && IsCalled(t))];
    }

    private static bool IsCalled(PartNumberTrend trend) => trend.Comparisons.Any(c => c.Finding == PartNumberFinding.Better);

    private static Block.Table Counts(PartNumberTrend trend, string asOf) => new(
        $"By part number, {asOf}",
        [
            new("Part number"), new("Lives", true), new("Failed", true), new("Aircraft", true), new("Failures per 1,000 h on the part", true),
            new("Fails within the look interval", true), new("Not counted", true),
        ],
        [.. trend.Numbers.Select(n => (Line[])
        [
            n.PartNumber, NumberWords.Count(n.Lives), NumberWords.Count(n.Failures), NumberWords.Count(n.Aircraft),
            FigureWords.Format(n.FailureRate, FigureStyle.Count).Estimate, FigureWords.Format(n.EarlyFailures, FigureStyle.Chance).Estimate,
            NumberWords.Count(n.NotCounted),
        ])]);

    private static Block.Table Compared(PartNumberTrend trend) => new(
        "Compared; p allows for all comparisons of the fleet",
        [new("Comparison"), new("Times", true), new("p", true), new("Verdict")],
        [.. trend.Comparisons.Where(c => c.PValue is not null).Select(c => (Line[])
        [
            FirstLetter.Capital(PartNumberWords.Compared(c)), FigureWords.Format(c.Times, FigureStyle.Times).Estimate,
            c.AdjustedPValue is { } p ? ChanceWords.Named("p", p, PValueLaw.Approximate) : "", PartNumberWords.Found(c),
        ])]);

    private static string Methods(IEnumerable<PartNumberTrend> compared) => string.Join("; ", compared
        .SelectMany(t => t.Numbers.SelectMany(n => new[] { ("failures per 1,000 h", n.FailureRate.Method), ("within the look interval", n.EarlyFailures.Method) })
            .Concat(t.Comparisons.Select(c => (c.Measure == PartNumberMeasure.Life ? "lives" : "early failures", c.Times.Method))))
        .Distinct()
        .Select(m => $"{m.Item1}: {m.Item2}")) + ". p after Holm 1979.";
}
