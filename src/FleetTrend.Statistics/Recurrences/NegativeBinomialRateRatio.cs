using FleetTrend.Statistics.Rates;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Events per hour of one group over those of another where units of a group differ in rate by a gamma distribution: negative binomial regression of
/// the counts on the group.
/// </summary>
public sealed record NegativeBinomialRateRatio
{
    private const double LargestTheta = 1e7;

    /// <summary>Second group's rate over the first's, with a normal interval on the logarithm.</summary>
    public required IntervalEstimate Ratio { get; init; }

    /// <summary>Logarithm of the ratio.</summary>
    public required double LogRatio { get; init; }

    /// <summary>Standard error of the logarithm, theta taken as known (the two are uncorrelated in large samples).</summary>
    public required double StandardError { get; init; }

    /// <summary>
    /// Shape of the gamma distribution of the units' rates: the variance of a count with mean m is m + m^2 / theta. Positive infinity where the
    /// counts spread no more than chance alone would spread them.
    /// </summary>
    public required double Theta { get; init; }

    /// <summary>Log-likelihood at the maximum, factorials included.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Fits the ratio by maximum likelihood.</summary>
    /// <param name="first">Units of the first group.</param>
    /// <param name="second">Units of the second group.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The fit, on the boundary too; the reasons of <see cref="RecurrenceRateRatio.Estimate"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: Lawless 1987, Canadian Journal of Statistics 15 (negative binomial regression); Venables and Ripley 2002, section 7.4.</remarks>
    public static Outcome<NegativeBinomialRateRatio> Estimate(
        IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var (one, two) = (new UnitCounts(first), new UnitCounts(second));
        if (UnitCounts.Refusal(one, two) is { } refusal)
            return refusal;
        var theta = BestTheta(one, two);
        var (rateOne, rateTwo) = (BestRate(one, theta), BestRate(two, theta));
        var log = Math.Log(rateTwo / rateOne);
        var error = Math.Sqrt(1 / Information(one, rateOne, theta) + 1 / Information(two, rateTwo, theta));
        var reach = Quantile.NormalTwoSided(confidence) * error;
        return new NegativeBinomialRateRatio
        {
            Ratio = new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(log - reach), Math.Exp(log + reach), confidence)),
            LogRatio = log,
            StandardError = error,
            Theta = theta,
            LogLikelihood = LogLikelihoodOf(one, rateOne, theta) + LogLikelihoodOf(two, rateTwo, theta),
        };
    }

    /// <summary>Where the slope in theta crosses zero; infinity where the counts spread no more than Poisson counts.</summary>
    private static double BestTheta(UnitCounts one, UnitCounts two)
    {
        if (Excess(one) + Excess(two) <= 0 || Slope(LargestTheta) > 0)
            return double.PositiveInfinity;
        var low = 1.0;
        while (Slope(low) <= 0 && low > 1e-12)
            low /= 4;
        return Math.Exp(RootSearch.Find(y => Slope(Math.Exp(y)), Math.Log(low), Math.Log(LargestTheta)));

        double Slope(double theta) => SlopeOf(one, theta) + SlopeOf(two, theta);
    }

    /// <summary>Twice the slope of the log-likelihood in 1/theta at Poisson counts: squared gaps less the counts.</summary>
    private static double Excess(UnitCounts group) =>
        group.Units.Sum(u => Math.Pow(u.Events - group.Rate * u.Hours, 2) - u.Events);

    private static double SlopeOf(UnitCounts group, double theta)
    {
        var rate = BestRate(group, theta);
        return group.Units.Sum(u =>
        {
            var mean = rate * u.Hours;
            // The sum of 1 / (theta + j) over the events is the difference of digammas, without its cancellation.
            var harmonic = Enumerable.Range(0, u.Events).Sum(j => 1 / (theta + j));
            return harmonic - ElementaryFunctions.LogP1(mean / theta) + (mean - u.Events) / (theta + mean);
        });
    }

    /// <summary>The rate at which the group's weighted gaps sum to zero: they fall as the rate rises.</summary>
    private static double BestRate(UnitCounts group, double theta)
    {
        if (double.IsInfinity(theta))
            return group.Rate;
        var (low, high) = (group.Rate, group.Rate);
        while (Gap(low) < 0)
            low /= 2;
        while (Gap(high) > 0)
            high *= 2;
        return low == high ? low : RootSearch.Find(Gap, low, high);

        double Gap(double rate) => group.Units.Sum(u => (u.Events - rate * u.Hours) / (1 + rate * u.Hours / theta));
    }

    private static double Information(UnitCounts group, double rate, double theta) =>
        group.Units.Sum(u => rate * u.Hours / (1 + rate * u.Hours / theta));

    private static double LogLikelihoodOf(UnitCounts group, double rate, double theta) => group.Units.Sum(u =>
    {
        var mean = rate * u.Hours;
        var common = (u.Events > 0 ? u.Events * Math.Log(mean) : 0) - SpecialFunctions.GammaLn(u.Events + 1.0);
        if (double.IsInfinity(theta))
            return common - mean;
        var rising = Enumerable.Range(0, u.Events).Sum(j => ElementaryFunctions.LogP1(j / theta));
        return common + rising - (theta + u.Events) * ElementaryFunctions.LogP1(mean / theta);
    });
}
