using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>How long gaskets and other parts last: here, elsewhere, and the chance of failure before the next look.</summary>
public static class PartLivesSection
{
    private const int MostTables = 4;

    /// <summary>Every kind of part of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="page">The address of a kind's own page, by type group and kind.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, Func<string, string, Uri> page)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(page);
        var draft = ReportDraft.OfPage(snapshot);
        var kinds = snapshot.PartLives.GroupBy(t => (t.TypeGroup, t.Kind)).OrderByDescending(g => g.Max(t => t.Failures))
            .ThenBy(g => g.Key.TypeGroup, StringComparer.Ordinal).ThenBy(g => g.Key.Kind, StringComparer.Ordinal).ToList();
        if (kinds.Count == 0)
            return new ReportSection("part-lives", "Part lives", [new Block.Paragraph($"No life of a part is known, {draft.AsOf}.")]);
        List<Block> blocks =
        [
            new Block.Table(
                $"Kinds of part, the most failures first, {draft.AsOf}",
                [new("Kind"), new("Type group"), new("Failures", true), new("Lives", true), new("Half failed by", true), new("A new one fails within its look interval", true)],
                [.. kinds.Select(g => OfKind(draft, [.. g], page(g.Key.TypeGroup, g.Key.Kind)))]),
        ];
        blocks.AddRange(draft.MethodBlocks());
        return new ReportSection("part-lives", "Part lives", blocks);
    }

    /// <summary>One kind of part of a type group, each base and all together, for a page; with its plot, where there is one.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="kind">The kind.</param>
    public static (ReportSection Section, ReportPlot? Plot) Compose(TrendSnapshot snapshot, string typeGroup, string kind)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var draft = ReportDraft.OfPage(snapshot);
        List<PartLifeTrend> trends = [.. Ordered(draft, snapshot.PartLives.Where(t => t.TypeGroup == typeGroup && t.Kind == kind))];
        List<Block> blocks = trends.Count == 0
            ? [new Block.Paragraph($"No life of such a part is known, {draft.AsOf}.")]
            : [.. Kind(draft, trends, hasPlot: true)];
        blocks.AddRange(draft.MethodBlocks());
        return (new ReportSection("part-lives", "How long it lasts", blocks), draft.Plots.Count > 0 ? draft.Plots[0] : null);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var kinds = draft.Current.PartLives
            .Where(t => draft.HasTypeGroup(t.TypeGroup))
            .GroupBy(t => (t.TypeGroup, t.Kind))
            .Where(g => g.Any(t => (t.Fits.Count > 0 || t.Contrast is not null) && (t.Base is null || draft.Scope.Covers(t.Base))))
            .OrderByDescending(g => g.Max(t => t.Failures))
            .ThenBy(g => g.Key.TypeGroup, StringComparer.Ordinal).ThenBy(g => g.Key.Kind, StringComparer.Ordinal)
            .ToList();
        if (kinds.Count == 0) return null;
        List<Block> blocks = [];
        for (var i = 0; i < Math.Min(kinds.Count, MostTables); i++)
            blocks.AddRange(Kind(draft, [.. Ordered(draft, kinds[i])], hasPlot: i == 0));
        if (kinds.Count > MostTables)
            blocks.Add(new Block.Paragraph($"{kinds.Count - MostTables} more part kinds in the trend queries.", IsAside: true));
        return new ReportSection("part-lives", draft.Scope.Base is null ? "Part lives" : "Part lives here", blocks);
    }

    private static IReadOnlyList<Line> OfKind(ReportDraft draft, List<PartLifeTrend> trends, Uri page)
    {
        // Where bases differ there is no line for all of them; the page has each.
        var all = trends.FirstOrDefault(t => t.Base is null) ?? trends[0];
        var name = FirstLetter.Capital(LocationWords.Kind(all.KindTitle, all.Kind));
        Line median = all.BasesDiffer ? "the bases differ" : all.Shown is { } fit ? draft.Cell(fit.Median, FigureStyle.Hours) : all.NotEnoughData ?? "not enough data";
        Line early = all.EarlyFailures is { } chance ? draft.Cell(chance, FigureStyle.Chance) : "";
        return [Line.Join(new Run.Link(name, page)), all.TypeGroup, NumberWords.Count(all.Failures), NumberWords.Count(all.Lives), median, early];
    }

    // This base first, then the others by name, then all together.
    private static IEnumerable<PartLifeTrend> Ordered(ReportDraft draft, IEnumerable<PartLifeTrend> trends) => trends
        .OrderBy(t => t.Base is null)
        .ThenByDescending(t => t.Base is not null && t.Base == draft.Scope.Base)
        .ThenBy(t => t.Base, StringComparer.Ordinal);

    private static IEnumerable<Block> Kind(ReportDraft draft, List<PartLifeTrend> trends, bool hasPlot)
    {
        var name = LocationWords.Kind(trends[0].KindTitle, trends[0].Kind);
        var ahead = NumberWords.Hours(draft.Current.Parameters.LookIntervalHoursOf(trends[0].TypeGroup, trends[0].Kind));
        yield return new Block.SubHeading($"{char.ToUpperInvariant(name[0])}{name[1..]}, {trends[0].TypeGroup}");
        foreach (var trend in trends.Where(t => t is { Base: not null, Contrast: not null } && IsWorthSaying(draft, t)))
            yield return new Block.Paragraph(Contrast(draft, LocationWords.Plural(name), trend, trend.Contrast!));
        yield return new Block.Table(
            $"Hours on the part at failure{Law(trends)}, {draft.AsOf}",
            [new("Where"), new("Half failed by", true), new("One in ten by", true), new($"A new one fails within {ahead}", true)],
            [.. trends.Where(t => !t.BasesDiffer).Select(t => Row(draft, t, LawOfBases(trends)))]);
        if (trends.Any(t => t.BasesDiffer))
            yield return new Block.Paragraph("The bases differ, so there is no line for all of them together.", IsAside: true);
        if (LeftOut(trends) is { } leftOut) yield return new Block.Paragraph(leftOut, IsAside: true);
        if (hasPlot && Picture(draft, trends) is { } picture) yield return picture;
    }

    // A report of one base always compares it; one of the fleet names the bases that are called worse.
    private static bool IsWorthSaying(ReportDraft draft, PartLifeTrend trend) =>
        draft.Scope.Base is { } here ? trend.Base == here : trend.Contrast!.IsWorse;

    private static Line Contrast(ReportDraft draft, string parts, PartLifeTrend trend, BaseContrast contrast)
    {
        List<Run> runs =
        [
            new Run.Strong(FirstLetter.Capital(ContrastWords.Headline(parts, trend.Base!, contrast)) + "."),
            contrast.MedianFromHours > 0 ? " Early failures left out, median here over median elsewhere: " : " Median here over median elsewhere: ",
            draft.Number(contrast.MedianRatio, FigureStyle.Times),
            $"; elsewhere {NumberWords.Count(contrast.OtherFailures, "failure", "failures")} among {NumberWords.Count(contrast.OtherLives, "life", "lives")}. ",
        ];
        if (contrast is { EarlyHere: { } here, EarlyElsewhere: { } elsewhere, EarlyHours: { } hours })
        {
            runs.AddRange(
            [
                $"New ones that fail within {NumberWords.Hours(hours)}: here ", draft.Number(here, FigureStyle.Chance),
                "; elsewhere ", draft.Number(elsewhere, FigureStyle.Chance), ". ",
            ]);
        }

        if (contrast.Strongest is { } test)
        {
            var named = $"({ChanceWords.Named("q", test.QValue, PValueLaw.Approximate)})";
            runs.Add(contrast.IsDifferent ? $"{ChanceWords.OfCalls(test.QValue, PValueLaw.Approximate, ChanceWords.OneLife)} {named}." : named);
        }

        return new Line(runs);
    }

    // One law for all bases, so that they compare; a row that shows another says so.
    private static string? LawOfBases(IReadOnlyList<PartLifeTrend> trends) =>
        trends.Where(t => t.Fits.Count > 0).OrderBy(t => t.Base is null).Select(t => t.Shown?.Distribution).FirstOrDefault();

    private static string Law(IReadOnlyList<PartLifeTrend> trends) =>
        LawOfBases(trends) is { } law ? $" by the {law} law, which fits better (AIC)" : string.Empty;

    private static IReadOnlyList<Line> Row(ReportDraft draft, PartLifeTrend trend, string? law)
    {
        var where = trend.Base ?? "All bases";
        var early = trend.EarlyFailures is { } chance ? draft.Cell(chance, FigureStyle.Chance) : (Line)"";
        if (trend.Shown is not { } fit)
        {
            var reason = trend.NotEnoughData ?? $"not enough data: {NumberWords.Count(trend.Failures, "failure", "failures")}";
            return [$"{where}: {reason}", Line.Join("Failures ", draft.Number(trend.FailureRate, FigureStyle.AsIs)), "", early];
        }

        return
        [
            fit.Distribution == law ? where : $"{where} ({fit.Distribution} law)",
            draft.Cell(fit.Median, FigureStyle.Hours),
            draft.Cell(fit.B10, FigureStyle.Hours),
            trend.EarlyFailures is null ? draft.Cell(fit.FailureWithinLookAhead, FigureStyle.Chance) : early,
        ];
    }

    private static string? LeftOut(IReadOnlyList<PartLifeTrend> trends)
    {
        var all = trends.FirstOrDefault(t => t.Base is null);
        if (all is null || all.AgeUnknown + all.OtherExcluded + all.LateEntries == 0) return null;
        return $"All bases: {NumberWords.Count(all.LateEntries, "life", "lives")} joined with part of their age behind them and count from there; "
            + $"{all.AgeUnknown} left out because their age is not known, {Others(all)}.";
    }

    // Trends of an earlier version have the sum alone.
    private static string Others(PartLifeTrend trend) =>
        trend is { FailedBeforeEntry: { } before, NeverExamined: { } never, FailedInNoHours: { } inNoHours }
        ? $"{before} because they had failed before records began, {never} because they were never examined"
            + (inNoHours > 0 ? $", {inNoHours} because they failed before any hour was flown under observation" : string.Empty)
        : $"{trend.OtherExcluded} because they had failed before records began, were never examined, "
            + "or failed before any hour was flown under observation";

    private static Block.Picture? Picture(ReportDraft draft, List<PartLifeTrend> trends)
    {
        var shown = trends.Where(t => t.Curve.Count > 0 || t is { Fits.Count: > 0, FollowedToHours: not null }).ToList();
        if (shown.Count == 0) return null;
        if (shown.Count > 2) shown = [.. shown.Where(t => t.Base is not null).Take(4)];
        var curves = shown.Select(Curve).ToList();
        var name = LocationWords.Kind(trends[0].KindTitle, trends[0].Kind);
        var medians = string.Join("; ", shown.Select(t => $"{t.Base ?? "all bases"} {Median(t)}"));
        var method = draft.Methods.NumberOf(shown[0].CurveMethod);
        return draft.Show(new PartLifePlot(
            "part-life",
            $"Curves of the share of {LocationWords.Plural(name)} failed against hours on the part. Half failed by: {medians}.",
            $"Share failed by hours on the part. Heavy bars: what the looks show; thin slopes: the failure lay between two looks, when is not known. "
                + $"Lines: fitted {LawOfBases(trends)} curves, over the ages at which parts were followed; half failed by: {medians}. "
                + $"Method of the bars [{method}], {draft.AsOf}.",
            curves));
    }

    private static LifeCurve Curve(PartLifeTrend trend) => new(
        $"{trend.Base ?? "all bases"} ({trend.Failures} of {trend.Lives} failed)", trend.Curve, trend.Shown,
        trend.FollowedFromHours ?? 0, trend.FollowedToHours ?? trend.Curve.Max(s => s.Upper ?? s.Lower));

    private static string Median(PartLifeTrend trend) =>
        trend.Shown is { } fit ? FigureWords.Format(fit.Median, FigureStyle.Hours).OneLine : "not enough data";
}
