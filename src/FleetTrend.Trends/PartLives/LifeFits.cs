using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>Weibull and lognormal fits of one set of lives.</summary>
internal static class LifeFits
{
    private const string Method =
        "maximum likelihood on left-truncated, interval- and right-censored lives, profile-likelihood limits "
        + "(Meeker and Escobar 1998; IEC 61649)";

    /// <summary>The fits that exist, smallest AIC first.</summary>
    public static IReadOnlyList<LifeDistributionFit> Fit(FittedLives lives, TrendParameters parameters)
    {
        LifeDistribution[] distributions = [LifeDistribution.Weibull, LifeDistribution.Lognormal];
        return [.. distributions
            .Select(d => LifeFit.Fit(d, lives.Lives, parameters.Confidence))
            .Where(o => o.IsEstimated)
            .Select(o => Fit(o.Value, lives, parameters))
            .OrderBy(f => f.Aic)];
    }

    /// <summary>
    /// The law that is shown for the bases of a kind, so that they compare: the one whose fits to them have the smaller sum of Akaike's
    /// criterion. Null where no base has both; each set then shows the law that fits it better.
    /// </summary>
    public static string? Shown(IEnumerable<IReadOnlyList<LifeDistributionFit>> bases) => bases
        .Where(f => f.Count == 2)
        .SelectMany(f => f)
        .GroupBy(f => f.Distribution, StringComparer.Ordinal)
        .OrderBy(g => g.Sum(f => f.Aic))
        .FirstOrDefault()?.Key;

    /// <summary>The family of a name that a fit has.</summary>
    public static LifeDistribution Family(string? name) =>
        name == LifeDistributionFit.Lognormal ? LifeDistribution.Lognormal : LifeDistribution.Weibull;

    private static LifeDistributionFit Fit(LifeFit fit, FittedLives lives, TrendParameters parameters)
    {
        var isWeibull = fit.Distribution == LifeDistribution.Weibull;
        var (first, second) = isWeibull ? (fit.Shape, fit.Scale) : (fit.Mu, fit.Sigma);
        return new LifeDistributionFit
        {
            Distribution = isWeibull ? LifeDistributionFit.Weibull : LifeDistributionFit.Lognormal,
            First = Parameter(first, isWeibull ? "" : "ln h"),
            FirstName = first.Name,
            Second = Parameter(second, isWeibull ? "h" : ""),
            SecondName = second.Name,
            LogLikelihood = fit.LogLikelihood,
            Aic = fit.Aic,
            B10 = LifeFigures.Age(fit.Quantile(0.1), lives, parameters, Method),
            Median = LifeFigures.Age(fit.Quantile(0.5), lives, parameters, Method),
            FailureWithinLookAhead = LifeFigures.Within(
                parameters.LookIntervalHours, fit.Cdf(parameters.LookIntervalHours), lives, parameters, Method),
        };

        Figure Parameter(LifeParameter parameter, string unit) => Figures.OfLives(
            parameter.Value, parameter.Interval, parameters.Confidence, unit, lives.Failures, lives.Count, Method);
    }
}
