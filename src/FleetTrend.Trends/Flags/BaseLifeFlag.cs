using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of a base where a kind of part fails early more often, or lasts less long, than at the other bases.</summary>
internal static class BaseLifeFlag
{
    private const string MedianTest =
        "median life at this base against that at the other bases of the type group, aircraft independent and not their parts: jackknife over "
        + "aircraft, Student's t (Lipsitz, Dear and Zhao 1994)";

    private const string EarlyTest =
        "early failures at this base against those at the other bases of the type group, given their sum, with the spread between aircraft: "
        + "mid-P (Przyborowski and Wilenski 1940; Lancaster 1961)";

    /// <summary>The flag of a trend whose contrast calls it worse.</summary>
    /// <param name="trend">The trend.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="tests">Tests made together.</param>
    public static ProposedFlag Of(PartLifeTrend trend, LocationKind kind, int tests)
    {
        var contrast = trend.Contrast!;
        var worst = contrast.Worst!;
        var isEarly = ReferenceEquals(worst, contrast.EarlyTest);
        return new ProposedFlag
        {
            Subject = SubjectOf(trend.TypeGroup, trend.Base!, trend.Kind),
            Kind = FlagKind.BasePartLife,
            Base = trend.Base!,
            TypeGroup = trend.TypeGroup,
            PartKind = trend.Kind,
            PartKindTitle = trend.KindTitle,
            Locations = [],
            Ratio = isEarly ? contrast.EarlyRatio! : contrast.MedianRatio,
            Contrast = contrast,
            Observed = trend.Failures,
            PValue = PValue.Approximate(worst.PValue),
            QValue = worst.QValue,
            Test = isEarly ? EarlyTest : MedianTest,
            Family = $"all {Words.Count(tests, "test", "tests")} of early failures and of median life, of a base and a kind of part against the other bases, "
                + "all type groups together (Benjamini and Hochberg 1995)",
            Statement = Statement(trend, contrast, worst),
            WhatToCheck = Checks.ForBase(kind),
        };
    }

    /// <summary>What such a flag is about, the same from week to week.</summary>
    public static string SubjectOf(string typeGroup, string atBase, string kind) => $"base-part-life/{typeGroup}/{atBase}/{kind}";

    private static string Statement(PartLifeTrend trend, BaseContrast contrast, ContrastTest worst)
    {
        var title = trend.KindTitle ?? trend.Kind;
        List<string> found = [];
        if (contrast.Median == ContrastFinding.Worse) found.Add(Sooner(contrast));
        if (contrast.Early == ContrastFinding.Worse) found.Add(Early(contrast));
        return $"{title} of {trend.TypeGroup} at {trend.Base}: {string.Join("; ", found)} "
            + $"({Words.Count(trend.Failures, "failure", "failures")} in {Words.Count(trend.Lives, "life", "lives")} here, "
            + $"{contrast.OtherFailures:#,0} in {contrast.OtherLives:#,0} elsewhere). {ChanceWords.OfDifference(PValue.Approximate(worst.PValue))}. "
            + $"Over all comparisons of bases, {Words.Small(ChanceWords.OfCalls(worst.QValue, PValueLaw.Approximate, ChanceWords.OneLife))}.";
    }

    private static string Sooner(BaseContrast contrast)
    {
        var left = contrast.MedianFromHours > 0 ? "early failures left out, " : "";
        return contrast is { MedianHere.Value: { } here, MedianElsewhere.Value: { } elsewhere }
            ? $"{left}half fail by {Words.Number(here)} h, against {Words.Number(elsewhere)} h elsewhere"
            : $"{left}they last {Words.Ratio(contrast.MedianRatio)}, as long as elsewhere";
    }

    private static string Early(BaseContrast contrast) =>
        $"{Share(contrast.EarlyHere)} fail within the first {Words.Number(contrast.EarlyHours ?? 0)} h, against {Share(contrast.EarlyElsewhere)} elsewhere";

    private static string Share(Figure? chance) => chance?.Value is { } value ? Words.Percent(value) : "none";
}
