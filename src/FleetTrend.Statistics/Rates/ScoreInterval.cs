namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Limits of the mean of a Poisson count by inverting the score test: the means whose standardised distance from the count is
/// the normal quantile. Quick and near the confidence for ten events or more; where a limit must hold, use
/// <see cref="GarwoodInterval"/>.
/// </summary>
public static class ScoreInterval
{
    /// <summary>Two-sided score interval of the mean count; closed at both ends.</summary>
    /// <param name="events">Events counted, zero or more. Zero gives a lower limit of zero.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>Limits in events: x + z²/2 ± z √(x + z²/4).</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Rao 1948 (score test); the interval as in Brown, Cai and DasGupta 2003, Statistica Sinica 13 (from memory).</remarks>
    public static Interval Estimate(int events, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Confidences.Check(confidence);
        var z = Quantile.NormalTwoSided(confidence);
        var half = z * Math.Sqrt(events + z * z / 4);
        var middle = events + z * z / 2;
        // The two limits multiply to the squared count, which keeps the lower one's digits.
        return new Interval((double)events * events / (middle + half), middle + half, confidence);
    }
}
