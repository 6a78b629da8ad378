using FleetTrend.Statistics.Rates;
using FleetTrend.Statistics.Recurrences;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>What few failures, or none, say about life when the Weibull shape is known from like parts.</summary>
/// <remarks>Source: Abernethy, The New Weibull Handbook, chapter 6; IEC 61649; chi-square limits, Nelson 1985.</remarks>
public static class Weibayes
{
    /// <summary>
    /// Lower limit of the scale at a stated shape, one-sided, for exact or no failures: (2 sum t^shape / chi-square)^(1/shape) with
    /// 2 (failures + 1) degrees of freedom, each t^shape less its entry age's. With no failures at all it still exists.
    /// An interval failure counts up to its last good age, so that the limit is on the safe side.
    /// </summary>
    /// <param name="shape">Stated shape, positive.</param>
    /// <param name="lives">The lives.</param>
    /// <param name="confidence">One-sided confidence, in (0, 1).</param>
    /// <returns>The limit in hours; a reason when nothing was seen good for any time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The shape is not positive and finite or the confidence is not in (0, 1).</exception>
    public static Outcome<double> ScaleLowerLimit(double shape, IReadOnlyList<Life> lives, double confidence = 0.95)
    {
        var (used, failures) = Used(shape, lives, confidence);
        if (!(used > 0)) return NoTime(failures);
        return Math.Pow(2 * used / ChiSquared.InvCDF(2 * (failures + 1), confidence), 1 / shape);
    }

    /// <summary>
    /// Scale at a stated shape, (sum t^shape / failures)^(1/shape), with its two-sided chi-square interval. Where observation ended by a
    /// date or a plan (<see cref="Truncation.Time"/>) the lower limit counts one failure more; where the last failure ended it, it does not
    /// and the interval is exact. With shape 1 this is the exponential mean life.
    /// </summary>
    /// <param name="shape">Stated shape, positive.</param>
    /// <param name="lives">The lives; an interval failure counts up to its last good age.</param>
    /// <param name="truncation">What ended the observation.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>Hours; a reason when nothing failed or nothing was seen good for any time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The shape is not positive and finite or the confidence is not in (0, 1).</exception>
    /// <remarks>Source: Epstein 1960; NIST/SEMATECH e-Handbook 8.4.5.1; Nelson 1985 for shapes other than 1.</remarks>
    public static Outcome<IntervalEstimate> Scale(
        double shape, IReadOnlyList<Life> lives, Truncation truncation = Truncation.Time, double confidence = 0.95)
    {
        var (used, failures) = Used(shape, lives, confidence);
        if (!(used > 0)) return NoTime(failures);
        if (failures == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No life has failed: only a lower limit of life can be stated.");
        var tail = (1 - confidence) / 2;
        var lower = used / Quantile.Gamma(1 - tail, truncation == Truncation.Time ? failures + 1 : failures);
        var upper = used / Quantile.Gamma(tail, failures);
        return new IntervalEstimate(Root(used / failures), new Interval(Root(lower), Root(upper), confidence));

        double Root(double power) => Math.Pow(power, 1 / shape);
    }

    private static (double Used, long Failures) Used(double shape, IReadOnlyList<Life> lives, double confidence)
    {
        Confidences.Check(confidence);
        if (!(shape > 0 && double.IsFinite(shape))) throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape is positive and finite.");
        var used = lives.Sum(l => l.Count * (Math.Pow(l.Lower, shape) - Math.Pow(l.Entry, shape)));
        return (used, lives.Where(l => l.Failed).Sum(l => (long)l.Count));
    }

    private static NotEstimable NoTime(long failures) => new(
        NotEstimableKind.NothingObserved, failures, "No life was seen good while under observation: there is no time to judge from.");
}
