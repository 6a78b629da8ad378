using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>Weibull and lognormal fits of one set of lives.</summary>
internal static class LifeFits
{
    private const string Method =
        "maximum likelihood on left-truncated, interval- and right-censored lives, profile-likelihood limits "
        + "(Meeker and Escobar 1998; IEC 61649)";

    /// <summary>The fits that exist, smallest AIC first.</summary>
    public static IReadOnlyList<LifeDistributionFit> Of(FittedLives lives, TrendParameters parameters)
    {
        LifeDistribution[] distributions = [LifeDistribution.Weibull, LifeDistribution.Lognormal];
        return [.. distributions
            .Select(d => LifeFit.Fit(d, lives.Lives, parameters.Confidence))
            .Where(o => o.IsEstimated)
            .Select(o => Fit(o.Value, lives, parameters))
            .OrderBy(f => f.Aic)];
    }

    private static LifeDistributionFit Fit(LifeFit fit, FittedLives lives, TrendParameters parameters)
    {
        var isWeibull = fit.Distribution == LifeDistribution.Weibull;
        var (first, second) = isWeibull ? (fit.Shape, fit.Scale) : (fit.Mu, fit.Sigma);
        return new LifeDistributionFit
        {
            Distribution = isWeibull ? "Weibull" : "lognormal",
            First = Parameter(first, isWeibull ? "" : "ln h"),
            FirstName = first.Name,
            Second = Parameter(second, isWeibull ? "h" : ""),
            SecondName = second.Name,
            LogLikelihood = fit.LogLikelihood,
            Aic = fit.Aic,
            B10 = Estimate(fit.Quantile(0.1), "h"),
            Median = Estimate(fit.Quantile(0.5), "h"),
            FailureWithinLookAhead = Estimate(fit.Cdf(parameters.LookAheadHours), ""),
        };

        Figure Parameter(LifeParameter parameter, string unit) => Of(parameter.Value, parameter.Interval, unit);

        Figure Estimate(IntervalEstimate estimate, string unit) => Of(estimate.Value, estimate.Interval, unit);

        Figure Of(double value, Interval interval, string unit) =>
            Figures.OfLives(value, interval, parameters.Confidence, unit, lives.Failures, lives.Count, Method);
    }
}
