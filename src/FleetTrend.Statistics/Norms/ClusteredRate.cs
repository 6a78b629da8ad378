using FleetTrend.Statistics.Rates;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// The common rate of units that differ, with limits that hold though they do: units (aircraft) are independent, their events are not. How much
/// they differ is taken from the counts as they are; no distribution is assumed.
/// </summary>
public sealed record ClusteredRate
{
    /// <summary>Fewer units tell too little of how they differ: a coefficient of variation of one half is assumed, as in <see cref="RatePrior.Weak"/>.</summary>
    private const int FewestUnits = 5;

    private const double AssumedVariation = 0.5;

    /// <summary>The counts of few units agree by chance: their spread is taken as that of half a Poisson count at least.</summary>
    private const double LeastDispersion = 0.5;

    private ClusteredRate(long events, double exposure, int units, Interval interval, double? dispersion) =>
        (Events, Exposure, Units, Interval, Dispersion) = (events, exposure, units, interval, dispersion);

    /// <summary>Events of all units.</summary>
    public long Events { get; }

    /// <summary>Exposure of all units.</summary>
    public double Exposure { get; }

    /// <summary>Units with exposure.</summary>
    public int Units { get; }

    /// <summary>Events per unit of exposure, of all units together.</summary>
    public double Rate => Events / Exposure;

    /// <summary>Interval of the rate.</summary>
    public Interval Interval { get; }

    /// <summary>
    /// Variance over mean of the units' counts beside the common rate (Pearson's chi-square over its degrees of freedom): near one where they have
    /// one rate and events come singly, more where they differ or come in bunches; null without an event, or for a single unit.
    /// </summary>
    public double? Dispersion { get; }

    /// <summary>Estimates it.</summary>
    /// <param name="units">Events and exposure of each unit; those without exposure do not enter.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The rate; without events it is zero with its exact upper limit. <see cref="NotEstimableKind.NothingObserved"/> without exposure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: sandwich variance of the logarithm with each unit beside the rate of the others, sum of (x - t r(others))² / (sum of x)², Liang and
    /// Zeger 1986, Biometrika 73; Mancl and DeRouen 2001, Biometrics 57. Student's t with one degree less than units. No event: Garwood 1936.
    /// Fewer than five units: t with four degrees, and no less than the variance of a Poisson count at a coefficient of variation of one half.
    /// </remarks>
    public static Outcome<ClusteredRate> Estimate(IReadOnlyList<CountExposure> units, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        Confidences.Check(confidence);
        List<CountExposure> observed = [.. units.Where(u => u.Exposure > 0)];
        if (observed.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit had exposure.");
        var (events, exposure) = (observed.Sum(u => (long)u.Events), observed.Sum(u => u.Exposure));
        if (events == 0)
        {
            var none = GarwoodInterval.Estimate(0, confidence);
            return new ClusteredRate(0, exposure, observed.Count, new Interval(0, none.Upper / exposure, confidence), null);
        }

        var rate = events / exposure;
        var factor = Math.Exp(HalfWidth(observed, events, exposure, confidence));
        var dispersion = EqualRatesTest.Test(observed).Match(test => test.ChiSquare / test.DegreesOfFreedom, _ => (double?)null);
        return new ClusteredRate(events, exposure, observed.Count, new Interval(rate / factor, rate * factor, confidence), dispersion);
    }

    /// <summary>Half the width of the interval of the logarithm.</summary>
    private static double HalfWidth(List<CountExposure> units, double events, double exposure, double confidence)
    {
        var (squares, shares) = (0.0, 0.0);
        foreach (var unit in units)
        {
            var share = unit.Exposure / exposure;
            shares += share * share;
            // Beside the rate of the others: x - t (N - x) / (T - t).
            if (units.Count > 1)
                squares += Math.Pow((unit.Events - events * share) / (1 - share), 2);
        }

        var robust = StudentT.InvCDF(0, 1, Math.Max(units.Count, FewestUnits) - 1, (1 + confidence) / 2) * Math.Sqrt(squares) / events;
        var least = units.Count < FewestUnits ? (1 / events) + (AssumedVariation * AssumedVariation * shares) : LeastDispersion / events;
        return Math.Max(robust, Quantile.NormalTwoSided(confidence) * Math.Sqrt(least));
    }
}
