namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Limits of a weighted sum of Poisson means: of the events expected over several strata at rates that are estimates
/// themselves. With one weight it is <see cref="GarwoodInterval"/> times the weight, exact; with several it is a gamma distribution
/// matched to the sum, which no set-up is known to drive below its confidence.
/// </summary>
public static class WeightedPoissonInterval
{
    /// <summary>Two-sided interval of the sum of weight times mean, equal tails; closed at both ends.</summary>
    /// <param name="counts">The counts with their weights, at least one. No events give a lower limit of zero.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>
    /// Limits in weighted events: y = sum of w x and v = sum of w² x give the lower limit as the gamma quantile at shape y²/v,
    /// scale v/y; the upper one takes one more event of the largest weight into both sums.
    /// </returns>
    /// <exception cref="ArgumentException">There is no count.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: Fay and Feuer 1997, Statistics in Medicine 16 (the gamma limits of directly standardised rates).</remarks>
    public static Interval Estimate(IReadOnlyList<WeightedCount> counts, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Count == 0)
            throw new ArgumentException("There is no count.", nameof(counts));
        Confidences.Check(confidence);

        // In units of the largest weight, so that squares of tiny weights do not vanish.
        var largest = counts.Max(c => c.Weight);
        var sum = counts.Sum(c => c.Weight / largest * c.Events);
        var variance = counts.Sum(c => c.Weight / largest * (c.Weight / largest) * c.Events);
        var tail = (1 - confidence) / 2;
        return new Interval(
            sum == 0 ? 0 : largest * Limit(sum, variance, tail), largest * Limit(sum + 1, variance + 1, 1 - tail), confidence);
    }

    private static double Limit(double sum, double variance, double probability) =>
        variance / sum * Quantile.Gamma(probability, sum / variance * sum);
}
