using FleetTrend.Records.Layouts;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of a base where a kind of part lasts less long than at the other bases.</summary>
internal static class BaseLifeFlag
{
    /// <summary>The flag of a trend with a contrast.</summary>
    public static ProposedFlag Of(PartLifeTrend trend, int comparisons)
    {
        var contrast = trend.Contrast!;
        return new ProposedFlag
        {
            Subject = SubjectOf(trend.TypeGroup, trend.Base!, trend.Kind),
            Kind = FlagKind.BasePartLife,
            Base = trend.Base!,
            TypeGroup = trend.TypeGroup,
            PartKind = trend.Kind,
            Locations = [],
            Ratio = contrast.MedianRatio,
            Observed = trend.Failures,
            PValue = contrast.PValue,
            QValue = contrast.QValue,
            Test = "lives at this base against those at the other bases of the type group: likelihood-ratio test of separate against common Weibull "
                + "parameters (Meeker and Escobar 1998)",
            Family = $"all {Words.Count(comparisons, "comparison", "comparisons")} of a base and a kind of part with the other bases, all type groups together "
                + "(Benjamini and Hochberg 1995)",
            Statement = Statement(trend, contrast),
            WhatToCheck = Checks.ForBase(trend.Kind),
        };
    }

    /// <summary>What such a flag is about, the same from week to week.</summary>
    public static string SubjectOf(string typeGroup, string atBase, string kind) => $"base-part-life/{typeGroup}/{atBase}/{kind}";

    private static string Statement(PartLifeTrend trend, BaseContrast contrast)
    {
        var title = LocationKinds.Find(trend.Kind)?.Title ?? trend.Kind;
        var median = trend.Fits.FirstOrDefault(f => f.Distribution == "Weibull")?.Median;
        var text = $"{title} of {trend.TypeGroup}: at {trend.Base} it lasts {Words.Number(contrast.MedianRatio.Value!.Value)} times as "
            + $"long as at the other bases ({Words.Interval(contrast.MedianRatio)})";
        if (median?.Value is { } hours)
            text += $": half have failed by {Words.Number(hours)} h against {Words.Number(hours / contrast.MedianRatio.Value!.Value)} h elsewhere";
        return text
            + $" ({Words.Count(trend.Failures, "failure", "failures")} in {Words.Count(trend.Lives, "life", "lives")} here, "
            + $"{contrast.OtherFailures:#,0} in {contrast.OtherLives:#,0} elsewhere); were there no difference between the bases, the chance of "
            + $"one so large would be {Words.Chance(contrast.PValue)}, and among calls as strong as this, over all comparisons of bases, "
            + $"{Words.Percent(contrast.QValue)} would be by chance.";
    }
}
