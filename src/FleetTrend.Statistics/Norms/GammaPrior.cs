using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// What is believed of one unit's rate before its own counts are seen, as a gamma distribution: worth <see cref="Shape"/> events in
/// <see cref="Rate"/> hours. What it says must come from experience that can be shown, and is to be stated beside every result.
/// </summary>
public sealed record GammaPrior
{
    private const double SmallestShape = 1e-2;
    private const double LargestShape = 1e6;

    /// <summary>Makes a prior.</summary>
    /// <param name="shape">Shape, finite, above zero.</param>
    /// <param name="rate">Rate parameter, hours, finite, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not finite and above zero.</exception>
    public GammaPrior(double shape, double rate)
    {
        CheckPositive(shape, nameof(shape));
        CheckPositive(rate, nameof(rate));
        Shape = shape;
        Rate = rate;
    }

    /// <summary>Shape.</summary>
    public double Shape { get; }

    /// <summary>Rate parameter, hours.</summary>
    public double Rate { get; }

    /// <summary>
    /// The prior with a stated median and low quantile of the mean time between events: "as likely above 600 h as below, and
    /// only five percent below 250 h".
    /// </summary>
    /// <param name="medianHours">Mean time between events that is as likely exceeded as not, hours.</param>
    /// <param name="lowHours">Low mean time between events, hours, above zero and below the median.</param>
    /// <param name="lowChance">Chance that the mean time between events lies below <paramref name="lowHours"/>, in (0, 0.5).</param>
    /// <returns>
    /// The prior; <see cref="NotEstimableKind.OnBoundary"/> where the two times lie so close together, or so far apart, that
    /// the shape would lie outside 0.01 to 1,000,000.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A time is not finite and above zero, they are swapped, or the chance is outside (0, 0.5).</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 8.2.5 (the 50/95 method).</remarks>
    public static Outcome<GammaPrior> FromMtbf(double medianHours, double lowHours, double lowChance = 0.05)
    {
        CheckPositive(medianHours, nameof(medianHours));
        CheckPositive(lowHours, nameof(lowHours));
        if (lowHours >= medianHours)
            throw new ArgumentOutOfRangeException(nameof(lowHours), lowHours, "The low time lies below the median.");
        if (!(lowChance is > 0 and < 0.5))
            throw new ArgumentOutOfRangeException(nameof(lowChance), lowChance, "The chance of the low time lies between 0 and one half.");

        // The ratio of the two quantiles depends on the shape alone and falls as the shape grows.
        double Gap(double logShape)
        {
            var shape = Math.Exp(logShape);
            return Math.Log(Quantile.Gamma(1 - lowChance, shape) / Quantile.Gamma(0.5, shape)) - Math.Log(medianHours / lowHours);
        }

        var (low, high) = (Math.Log(SmallestShape), Math.Log(LargestShape));
        if (Gap(low) < 0 || Gap(high) > 0)
            return new NotEstimable(NotEstimableKind.OnBoundary, 0, "The two times are too close together or too far apart for a gamma distribution.");
        var found = Math.Exp(RootSearch.Find(Gap, low, high));
        return new GammaPrior(found, medianHours * Quantile.Gamma(0.5, found));
    }

    /// <summary>What is believed after the unit's own events and hours.</summary>
    /// <param name="unit">Its events and hours.</param>
    /// <param name="confidence">Credibility of the interval, in (0, 1).</param>
    /// <returns>The gamma distribution with the events added to the shape and the hours to the rate parameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The credibility is outside (0, 1).</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 8.4.6; conjugacy of gamma and Poisson.</remarks>
    public GammaPosterior Posterior(CountExposure unit, double confidence = 0.95) =>
        new(Shape + unit.Events, Rate + unit.Exposure, confidence);

    private static void CheckPositive(double value, string name)
    {
        if (!(value > 0) || double.IsInfinity(value))
            throw new ArgumentOutOfRangeException(name, value, "The value is finite and above zero.");
    }
}
