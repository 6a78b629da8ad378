using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Two sets of units (aircraft), each with lives: how the median lives compare where units, not lives, are independent.
/// </summary>
/// <remarks>
/// Parts of one aircraft share its vibration, its heat and its mechanics, so the number of lives overstates what is known. The variance of
/// each ln median is that of the jackknife over units, in one Newton step from the fit. Few units make it unsteady; therefore the two sides
/// share one ratio of jackknife to likelihood variance, and the statistic is held against Student's t.
/// Source: jackknife by clusters, Lipsitz, Dear and Zhao 1994; sandwich variance, Liang and Zeger 1986; medians, Meeker and Escobar 1998,
/// section 8.4. How often it is right, against the test without units: COVERAGE.md.
/// </remarks>
public sealed record LifeContrast
{
    private LifeContrast(Side first, Side second, double confidence)
    {
        First = first.Fit;
        Second = second.Fit;
        DegreesOfFreedom = first.Units + second.Units - 2;
        DesignEffect =
            (((first.Units - 1) * first.Jackknife / first.Variance) + ((second.Units - 1) * second.Jackknife / second.Variance))
            / DegreesOfFreedom;
        var error = Math.Sqrt(DesignEffect * (first.Variance + second.Variance));
        var log = first.LogMedian - second.LogMedian;
        var reach = StudentT.InvCDF(0, 1, DegreesOfFreedom, (1 + confidence) / 2) * error;
        MedianRatio = new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(log - reach), Math.Exp(log + reach), confidence));
        PValue = Math.Min(1, 2 * StudentT.CDF(0, 1, DegreesOfFreedom, -Math.Abs(log) / error));
    }

    /// <summary>Fit to the first set.</summary>
    public LifeFit First { get; }

    /// <summary>Fit to the second set.</summary>
    public LifeFit Second { get; }

    /// <summary>Median of the first over median of the second; its interval leaves out 1 exactly where the test calls.</summary>
    public IntervalEstimate MedianRatio { get; }

    /// <summary>Variance between units over the variance that independent lives would give; 1 where units are alike.</summary>
    public double DesignEffect { get; }

    /// <summary>Units with lives, less two.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Two-sided chance of a ratio at least this far from 1, were the medians equal.</summary>
    public double PValue { get; internal init; }

    /// <summary>Fits both parameters to each set and compares the medians.</summary>
    /// <param name="distribution">A family with two parameters.</param>
    /// <param name="first">Units of the first set, each with its lives; those without any say nothing.</param>
    /// <param name="second">Units of the second set.</param>
    /// <param name="confidence">Confidence of the interval, in (0, 1).</param>
    /// <returns>The contrast; or the reason: a side without a fit, or one that has none without one of its units, or too few units.</returns>
    /// <exception cref="ArgumentException">The family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<LifeContrast> Estimate(
        LifeDistribution distribution,
        IReadOnlyList<IReadOnlyList<Life>> first,
        IReadOnlyList<IReadOnlyList<Life>> second,
        double confidence = 0.95)
    {
        if (distribution == LifeDistribution.Exponential)
            throw new ArgumentException("A contrast needs a family with two parameters.", nameof(distribution));
        return Side.Build(distribution, first, confidence).Then(a => Side.Build(distribution, second, confidence).Then<LifeContrast>(b =>
            a.Units + b.Units < 3
                ? new NotEstimable(NotEstimableKind.NoInformation, a.Fit.Failures + b.Fit.Failures, "One unit against one cannot tell unit from set.")
                : new LifeContrast(a, b, confidence)));
    }

    /// <summary>One set: its fit, the variance of its ln median if lives were independent, and that by the jackknife over units.</summary>
    private sealed record Side(LifeFit Fit, double LogMedian, double Variance, double Jackknife, int Units)
    {
        public static Outcome<Side> Build(LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> units, double confidence) =>
            LifeFit.Fit(distribution, [.. units.SelectMany(u => u)], confidence).Then(fit => Build(fit, units));

        private static Outcome<Side> Build(LifeFit fit, IReadOnlyList<IReadOnlyList<Life>> units)
        {
            var family = StandardDistribution.Select(fit.Distribution);
            var logMedian = Math.Log(fit.Model.Quantile(0.5));
            var ofTau = fit.Model.Mu - logMedian; // ln median = ln scale + z/shape, so this is its derivative in ln shape
            List<LikelihoodPoint> points =
                [.. units.Where(u => u.Count > 0).Select(u => family.LogLikelihood(new LifeArrays(u), fit.Model.Mu, Math.Log(fit.Model.Shape)))];
            var all = points.Aggregate((a, b) => a + b);
            var without = new double[points.Count];
            for (var i = 0; i < points.Count; i++)
            {
                if (UnitStep.Without(points[i], all) is not { } step)
                    return new NotEstimable(NotEstimableKind.TooFewEvents, fit.Failures, "Without one of the units the distribution cannot be fitted.");
                without[i] = step.Mu + (ofTau * step.Tau);
            }

            var mean = without.Average();
            var jackknife = points.Count == 1 ? 0 : (points.Count - 1.0) / points.Count * without.Sum(x => (x - mean) * (x - mean));
            return new Side(fit, logMedian, fit.LogCovariance.Variance(1, ofTau), jackknife, points.Count);
        }
    }
}
