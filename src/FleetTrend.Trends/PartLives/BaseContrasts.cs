using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>Part life at one base against the other bases.</summary>
internal static class BaseContrasts
{
    private const string Method =
        "ratio of Weibull medians, limits on the logarithm from the standard errors (Meeker and Escobar 1998); "
        + "likelihood-ratio test of separate against common parameters";

    /// <summary>The contrast, or null where one side has too few failures; the q-value is set when all contrasts are known.</summary>
    public static BaseContrast? Of(FittedLives here, FittedLives elsewhere, TrendParameters parameters)
    {
        if (Math.Min(here.Failures, elsewhere.Failures) < parameters.MinimumFailuresForFit
            || !LifeContrast.Estimate(LifeDistribution.Weibull, here.Lives, elsewhere.Lives, parameters.Confidence).TryGetValue(out var contrast))
        {
            return null;
        }
        var ratio = contrast.MedianRatio;
        return new BaseContrast
        {
            MedianRatio = Figures.OfLives(
                ratio.Value, ratio.Interval, parameters.Confidence, "", here.Failures, here.Count, Method),
            OtherLives = elsewhere.Count,
            OtherFailures = elsewhere.Failures,
            LikelihoodRatio = contrast.LikelihoodRatio,
            PValue = contrast.PValue,
            QValue = 1,
        };
    }
}
