using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.RenewalAges;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>When to renew parts and how often to look at them: the few kinds where renewing helps in a report; all of them on a page.</summary>
public static class RenewalAgesSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;
    private const string Heading = "When to renew, how often to look";

    /// <summary>Every kind of part of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.RenewalAges.Count == 0)
            return new ReportSection("renewal-ages", Heading, [new Block.Paragraph($"No life of a part is known, {asOf}.")]);
        List<RenewalAge> shown = [.. snapshot.RenewalAges.Take(MostRows)];
        List<Block> blocks =
        [
            new Block.Paragraph(RenewalAgeWords.Caution), Table(shown, asOf),
            new Block.Bullets([.. shown.Select(a => (Line)RenewalAgeWords.Statement(a))]),
        ];
        if (snapshot.RenewalAges.Count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(snapshot.RenewalAges.Count - MostRows)} more. ListRenewalAges has all of them.", IsAside: true));
        blocks.AddRange(Ending(snapshot.RenewalAges));
        return new ReportSection("renewal-ages", Heading, blocks);
    }

    /// <summary>One kind of part of a type group, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="kind">The kind.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, string typeGroup, string kind)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        List<RenewalAge> ages = [.. snapshot.RenewalAges.Where(a => a.TypeGroup == typeGroup && a.Kind == kind)];
        if (ages.Count == 0)
            return new ReportSection("renewal-ages", Heading, [new Block.Paragraph("It has not been worked out yet.")]);
        List<Block> blocks = [.. ages.Select(a => new Block.Paragraph(RenewalAgeWords.Statement(a))), Table(ages, $"as of {NumberWords.Moment(snapshot.AsOf)}")];
        blocks.Add(new Block.Paragraph(RenewalAgeWords.Caution));
        blocks.AddRange(Ending(ages));
        return new ReportSection("renewal-ages", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<RenewalAge> told = [.. draft.Current.RenewalAges
            .Where(a => a.Finding == RenewalFinding.Renew && draft.HasTypeGroup(a.TypeGroup) && (a.Base is null || draft.Scope.Covers(a.Base)))];
        if (told.Count == 0)
            return null;
        List<Block> blocks =
        [
            new Block.Bullets([.. told.Take(MostLines).Select(a => (Line)RenewalAgeWords.Statement(a))]),
            new Block.Paragraph(RenewalAgeWords.Caution),
        ];
        var rest = told.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
        {
            var more = rest > 0 ? $"{NumberWords.Count(rest)} more, and where renewing does not help" : "Where renewing does not help, and what it all rests on";
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "renewal"))), IsAside: true));
        }
        else if (rest > 0)
        {
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        }

        return new ReportSection("renewal-ages", Heading, blocks);
    }

    private static Block.Table Table(List<RenewalAge> ages, string asOf) => new(
        $"Renewal ages and look intervals, {asOf}. A maker's limit that has not been told is to be looked up",
        [
            new("Kind"), new("Failures", true), new("Wears out above 1", true), new("Costs least at", true), new("Maker's limit", true), new("Renew at", true),
            new("Saves", true), new("Longest look interval", true), new("Maker's limit", true), new("Set now", true), new("Fail between looks now", true),
        ],
        [.. ages.Select(a => (Line[])
        [
            RenewalAgeWords.Subject(a), $"{NumberWords.Count(a.Failures)} of {NumberWords.Count(a.Lives)}", Cell(a.Shape, FigureStyle.Count), Cell(a.CheapestAge, FigureStyle.Hours),
            Limit(a.MakerRenewalHours), a.AgeHours is { } age ? NumberWords.Hours(age) : "no age", Cell(a.Saved, FigureStyle.Chance),
            Cell(a.LongestLook, FigureStyle.Hours), Limit(a.MakerLookHours), NumberWords.Hours(a.SetLookHours), Cell(a.ChanceAtSet, FigureStyle.Chance),
        ])]);

    private static string Cell(Figure? figure, FigureStyle style) => figure is null ? "" : FigureWords.Format(figure, style).Estimate;

    private static string Limit(double? hours) => hours is { } limit ? NumberWords.Hours(limit) : "not told";

    private static IEnumerable<Block> Ending(IReadOnlyList<RenewalAge> ages)
    {
        yield return new Block.Paragraph(RenewalAgeWords.Assumptions, IsAside: true);
        if (ages.Any(a => a.BetterLaw is not null))
        {
            var kinds = string.Join("; ", ages.Where(a => a.BetterLaw is not null).Select(a => $"{RenewalAgeWords.Subject(a)} ({a.BetterLaw})").Distinct(StringComparer.Ordinal));
            yield return new Block.Paragraph($"Another law fits these lives better than the Weibull law, so take their figures as rougher than their limits say: {kinds}.", IsAside: true);
        }

        var methods = ages.SelectMany(a => new[] { a.Shape, a.CheapestAge, a.LongestLook }).OfType<Figure>()
            .Select(f => f.Method).Distinct(StringComparer.Ordinal).ToList();
        if (methods.Count > 0)
            yield return new Block.Paragraph($"How it is worked out: {string.Join(". ", methods)}.", IsAside: true);
    }
}
