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
        Confidences.Check(confidence);
        if (!(shape > 0 && double.IsFinite(shape))) throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape is positive and finite.");
        double used = 0;
        long failures = 0;
        foreach (var life in lives)
        {
            used += life.Count * (Math.Pow(life.Lower, shape) - Math.Pow(life.Entry, shape));
            if (life.Failed) failures += life.Count;
        }

        if (!(used > 0))
        {
            return new NotEstimable(
                NotEstimableKind.NothingObserved, failures, "No life was seen good while under observation: there is no time to judge from.");
        }

        return Math.Pow(2 * used / ChiSquared.InvCDF(2 * (failures + 1), confidence), 1 / shape);
    }
}
