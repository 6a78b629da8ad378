using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Effects;

/// <summary>How much fewer: after over before and after over the norm, both allowing for what the others had at the same time.</summary>
public static class EffectRatio
{
    /// <summary>Found over expected after the action, over the same before it.</summary>
    /// <param name="foundBefore">Findings before.</param>
    /// <param name="expectedBefore">Expected then.</param>
    /// <param name="foundAfter">Findings after.</param>
    /// <param name="expectedAfter">Expected then, with the norm of then.</param>
    /// <param name="dispersion">Variance over mean: counts in bunches tell as much as so many fewer single ones.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The ratio; null where nothing was found or expected on a side, so that it may be anything.</returns>
    /// <remarks>
    /// Given the total, the count after is binomial, exactly where the dispersion is one. The norm is taken as known. For a unit that was called for its
    /// findings before, the ratio leans to the good side; the verdict does not rest on it. Source: Przyborowski and Wilenski 1940, Biometrika 31;
    /// Clopper and Pearson 1934, Biometrika 26.
    /// </remarks>
    public static IntervalEstimate? AfterOverBefore(
        double foundBefore, double expectedBefore, double foundAfter, double expectedAfter, double dispersion = 1, double confidence = 0.9)
    {
        if (!(expectedBefore > 0) || !(expectedAfter > 0) || foundBefore + foundAfter == 0)
            return null;
        var tail = (1 - confidence) / 2;
        var (before, after) = (foundBefore / dispersion, foundAfter / dispersion);
        var scale = expectedBefore / expectedAfter;
        return new IntervalEstimate(
            foundBefore == 0 ? double.PositiveInfinity : foundAfter / foundBefore * scale,
            new Interval(
                after == 0 ? 0 : Quantile.BetaOdds(tail, after, before + 1) * scale,
                before == 0 ? double.PositiveInfinity : Quantile.BetaOdds(1 - tail, after + 1, before) * scale, confidence));
    }

    /// <summary>Found over expected.</summary>
    /// <param name="found">Findings.</param>
    /// <param name="expected">Expected, above zero.</param>
    /// <param name="dispersion">Variance over mean.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <remarks>Source: Garwood 1936, Biometrika 28; counts over their dispersion, as in McCullagh and Nelder 1989, section 6.2.</remarks>
    public static IntervalEstimate OverNorm(double found, double expected, double dispersion = 1, double confidence = 0.9)
    {
        var (tail, count) = ((1 - confidence) / 2, found / dispersion);
        var scale = dispersion / expected;
        return new IntervalEstimate(
            found / expected,
            new Interval(
                count == 0 ? 0 : Quantile.Gamma(tail, count) * scale,
                Quantile.Gamma(1 - tail, count + 1) * scale, confidence));
    }
}
