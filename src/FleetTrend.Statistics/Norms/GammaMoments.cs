namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Mean and variance of units' rates by moments: what the raw rates spread beyond what chance alone gives them. Quick and
/// without a model of the distribution; <see cref="GammaPoissonFit"/> uses the counts better.
/// </summary>
/// <param name="Mean">Pooled rate, events per unit of exposure.</param>
/// <param name="Variance">Variance of rates between units, above zero.</param>
public sealed record GammaMoments(double Mean, double Variance)
{
    /// <summary>Shape of the gamma distribution with these moments.</summary>
    public double Shape => Mean * Mean / Variance;

    /// <summary>Rate parameter of the gamma distribution with these moments.</summary>
    public double Rate => Mean / Variance;

    /// <summary>Estimates both moments.</summary>
    /// <param name="units">Units; those without exposure do not enter.</param>
    /// <returns>
    /// The moments; <see cref="NotEstimableKind.OnBoundary"/> where rates spread no more than chance alone would spread them,
    /// and the reasons of <see cref="EqualRatesTest.Test"/>.
    /// </returns>
    /// <remarks>
    /// Source: moments as in Marshall 1991, Applied Statistics 40 (from memory), in the unbiased form with events - 1 degrees:
    /// (sum of t (r - m)² - (n - 1) m) / (T - sum of t² / T).
    /// </remarks>
    public static Outcome<GammaMoments> Estimate(IReadOnlyList<CountExposure> units) =>
        EqualRatesTest.Test(units).Then<GammaMoments>(test =>
        {
            // T - sum of t²/T as sum of t (T - t)/T: where one unit has nearly all the exposure, the difference itself has no digits left.
            var observed = units.Select(u => u.Exposure).Where(t => t > 0).OrderDescending().ToList();
            var others = observed.Skip(1).Sum();
            var total = observed[0] + others;
            var spread = test.PooledRate * (test.ChiSquare - test.DegreesOfFreedom);
            var weight = observed[0] * others / total + observed.Skip(1).Sum(t => t * (total - t) / total);
            return spread > 0
                ? new GammaMoments(test.PooledRate, spread / weight)
                : new NotEstimable(NotEstimableKind.OnBoundary, test.Events, "Rates spread no more than chance alone would spread them.");
        });
}
