using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Reports.Words;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Reports.Weekly;

/// <summary>How long gaskets and other parts last: here, elsewhere, and the chance of failure before the next look.</summary>
internal static class PartLivesSection
{
    private const string Weibull = "Weibull";
    private const int MostTables = 4;

    public static ReportSection? Of(ReportDraft draft)
    {
        var kinds = draft.Current.PartLives
            .Where(t => draft.HasTypeGroup(t.TypeGroup) && t.Fits.Count > 0)
            .GroupBy(t => (t.TypeGroup, t.Kind))
            .Where(g => g.Any(t => t.Base is null || draft.Scope.Covers(t.Base)))
            .OrderByDescending(g => g.Key.Kind == "gasket")
            .ThenByDescending(g => g.Max(t => t.Failures))
            .ThenBy(g => g.Key.TypeGroup, StringComparer.Ordinal).ThenBy(g => g.Key.Kind, StringComparer.Ordinal)
            .ToList();
        if (kinds.Count == 0) return null;
        List<Block> blocks = [];
        for (var i = 0; i < Math.Min(kinds.Count, MostTables); i++)
            blocks.AddRange(Kind(draft, [.. Ordered(draft, kinds[i])], hasPlot: i == 0));
        if (kinds.Count > MostTables)
            blocks.Add(new Block.Paragraph($"{kinds.Count - MostTables} more part kinds in the trend queries.", IsAside: true));
        return new ReportSection("part-lives", draft.Scope.Base is null ? "Gasket and part lives" : "Gasket and part lives here", blocks);
    }

    // This base first, then the others by name, then all together.
    private static IEnumerable<PartLifeTrend> Ordered(ReportDraft draft, IEnumerable<PartLifeTrend> trends) => trends
        .OrderBy(t => t.Base is null)
        .ThenByDescending(t => t.Base is not null && t.Base == draft.Scope.Base)
        .ThenBy(t => t.Base, StringComparer.Ordinal);

    private static IEnumerable<Block> Kind(ReportDraft draft, IReadOnlyList<PartLifeTrend> trends, bool hasPlot)
    {
        var name = LocationWords.Kind(trends[0].Kind);
        var ahead = NumberWords.Hours(draft.Current.Parameters.LookAheadHours);
        yield return new Block.SubHeading($"{char.ToUpperInvariant(name[0])}{name[1..]}, {trends[0].TypeGroup}");
        foreach (var trend in trends.Where(t => t is { Base: not null, Contrast: not null } && IsWorthSaying(draft, t)))
            yield return new Block.Paragraph(Contrast(draft, trend, trend.Contrast!));
        yield return new Block.Table(
            $"Hours on the part at failure, {draft.AsOf}",
            [new("Where"), new("Half failed by", true), new("One in ten by", true), new($"A new one fails within {ahead}", true)],
            [.. trends.Select(t => Row(draft, t))]);
        if (LeftOut(trends) is { } leftOut) yield return new Block.Paragraph(leftOut, IsAside: true);
        if (hasPlot && Picture(draft, trends) is { } picture) yield return picture;
    }

    // A report of one base always compares it; one of the fleet names the bases where the part lasts less long.
    private static bool IsWorthSaying(ReportDraft draft, PartLifeTrend trend) => draft.Scope.Base is { } here
        ? trend.Base == here
        : trend.Contrast!.MedianRatio.Value < 1 && trend.Contrast.QValue <= draft.Current.Parameters.FalseDiscoveryRate;

    private static Line Contrast(ReportDraft draft, PartLifeTrend trend, BaseContrast contrast)
    {
        var ratio = contrast.MedianRatio.Value;
        var verdict = contrast.QValue <= draft.Current.Parameters.FalseDiscoveryRate
            ? ratio < 1 ? "last less long than" : "last longer than"
            : "last about as long as, or the data cannot tell from,";
        return Line.Of(
            new Run.Strong($"At {trend.Base} they {verdict} at the other bases."),
            " Median here over median elsewhere: ",
            draft.Number(contrast.MedianRatio, FigureStyle.Times),
            $"; elsewhere {NumberWords.Count(contrast.OtherFailures, "failure", "failures")} among {NumberWords.Count(contrast.OtherLives, "life", "lives")}. ",
            ChanceWords.OfQ(contrast.QValue));
    }

    private static IReadOnlyList<Line> Row(ReportDraft draft, PartLifeTrend trend)
    {
        var where = trend.Base ?? "All bases";
        // The Weibull fit is shown whichever fits best, so that bases compare; the better fit is named.
        var fit = trend.Fits.FirstOrDefault(f => f.Distribution == Weibull) ?? (trend.Fits.Count > 0 ? trend.Fits[0] : null);
        if (fit is null)
        {
            var reason = trend.NotEnoughData ?? $"not enough data: {NumberWords.Count(trend.Failures, "failure", "failures")}";
            return [$"{where}: {reason}", Line.Of("Failures ", draft.Number(trend.FailureRate, FigureStyle.AsIs)), "", ""];
        }

        var better = trend.Fits[0].Distribution == fit.Distribution ? string.Empty : $" ({trend.Fits[0].Distribution} fits better by AIC)";
        return
        [
            $"{where}{better}",
            draft.Cell(fit.Median, FigureStyle.Hours),
            draft.Cell(fit.B10, FigureStyle.Hours),
            draft.Cell(fit.FailureWithinLookAhead, FigureStyle.Chance),
        ];
    }

    private static string? LeftOut(IReadOnlyList<PartLifeTrend> trends)
    {
        var all = trends.FirstOrDefault(t => t.Base is null);
        if (all is null || all.AgeUnknown + all.OtherExcluded + all.LateEntries == 0) return null;
        return $"All bases: {NumberWords.Count(all.LateEntries, "life", "lives")} joined with part of their age behind them and count from there; "
            + $"{all.AgeUnknown} left out because their age is not known, {all.OtherExcluded} because they had failed before records began or were never examined.";
    }

    private static Block.Picture? Picture(ReportDraft draft, IReadOnlyList<PartLifeTrend> trends)
    {
        var shown = trends.Where(t => t.Curve.Count > 0 || t.Fits.Count > 0).ToList();
        if (shown.Count == 0) return null;
        if (shown.Count > 2) shown = [.. shown.Where(t => t.Base is not null).Take(4)];
        var curves = shown.Select(Curve).ToList();
        var name = LocationWords.Kind(trends[0].Kind);
        var medians = string.Join("; ", shown.Select(t => $"{t.Base ?? "all bases"} {Median(t)}"));
        var method = draft.Methods.NumberOf(shown[0].CurveMethod);
        return new Block.Picture(new PartLifePlot(
            "part-life",
            $"Curves of the share of {FlagHeadline.Plural(name)} failed against hours on the part. Half failed by: {medians}.",
            $"Share failed by hours on the part. Heavy bars: what the looks show; thin slopes: the failure lay between two looks, when is not known. "
                + $"Lines: fitted Weibull curves; half failed by: {medians}. Method of the bars [{method}], {draft.AsOf}.",
            curves));
    }

    private static LifeCurve Curve(PartLifeTrend trend)
    {
        var fit = trend.Fits.FirstOrDefault(f => f.Distribution == Weibull);
        return new LifeCurve(
            $"{trend.Base ?? "all bases"} ({trend.Failures} of {trend.Lives} failed)", trend.Curve, fit?.First.Value, fit?.Second.Value);
    }

    private static string Median(PartLifeTrend trend) =>
        trend.Fits.FirstOrDefault(f => f.Distribution == Weibull) is { } fit
            ? FigureWords.Of(fit.Median, FigureStyle.Hours).OneLine
            : "not enough data";
}
