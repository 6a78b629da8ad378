using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Two sets of lives against each other: how the median lives compare, and whether one distribution would do for both.
/// </summary>
public sealed record LifeContrast
{
    private LifeContrast(LifeFit first, LifeFit second, double commonLogLikelihood)
    {
        First = first;
        Second = second;
        LikelihoodRatio = Math.Max(0, 2 * (first.LogLikelihood + second.LogLikelihood - commonLogLikelihood));
        MedianRatio = Ratio(first, second);
    }

    /// <summary>Fit to the first set.</summary>
    public LifeFit First { get; }

    /// <summary>Fit to the second set.</summary>
    public LifeFit Second { get; }

    /// <summary>Median of the first over median of the second, with an interval on the logarithm from the standard errors.</summary>
    public IntervalEstimate MedianRatio { get; }

    /// <summary>Twice the gain in log-likelihood of separate over common parameters: near chi-square with two degrees of freedom.</summary>
    public double LikelihoodRatio { get; }

    /// <summary>Chance of a gain at least this large, were both sets from one distribution.</summary>
    public double PValue => Math.Exp(-LikelihoodRatio / 2);

    /// <summary>Fits both parameters to each set and to both together.</summary>
    /// <param name="distribution">A family with two parameters.</param>
    /// <param name="first">Lives of the first set, in any order.</param>
    /// <param name="second">Lives of the second set, in any order.</param>
    /// <param name="confidence">Confidence of the interval, in (0, 1).</param>
    /// <returns>The contrast, or the reason why one of the three fits does not exist.</returns>
    /// <exception cref="ArgumentException">The family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>
    /// Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, sections 8.3 and 8.4 (likelihood ratio, delta method).
    /// The chance of chi-square with two degrees of freedom above x is exp(-x/2).
    /// </remarks>
    public static Outcome<LifeContrast> Estimate(
        LifeDistribution distribution, IReadOnlyList<Life> first, IReadOnlyList<Life> second, double confidence = 0.95)
    {
        if (distribution == LifeDistribution.Exponential)
            throw new ArgumentException("A contrast needs a family with two parameters.", nameof(distribution));
        return LifeFit.Fit(distribution, first, confidence).Then(a =>
            LifeFit.Fit(distribution, second, confidence).Then(b =>
                LifeFit.Fit(distribution, [.. first, .. second], confidence).Then<LifeContrast>(both =>
                    new LifeContrast(a, b, both.LogLikelihood))));
    }

    private static IntervalEstimate Ratio(LifeFit first, LifeFit second)
    {
        var log = LogMedian(first) - LogMedian(second);
        var reach = Quantile.NormalTwoSided(first.Confidence) * Math.Sqrt(LogMedianVariance(first) + LogMedianVariance(second));
        return new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(log - reach), Math.Exp(log + reach), first.Confidence));
    }

    private static double LogMedian(LifeFit fit) => Math.Log(fit.Law.Quantile(0.5));

    /// <summary>ln median = ln scale + z/shape, so its derivative in ln shape is ln scale - ln median.</summary>
    private static double LogMedianVariance(LifeFit fit) => fit.LogCovariance.Of(1, Math.Log(fit.Law.Scale) - LogMedian(fit));
}
