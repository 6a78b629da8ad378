namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Exact limits of the mean of a Poisson count: each limit is the mean at which the count seen, or a more extreme
/// one, would have the stated tail probability. Coverage is never below the confidence stated.
/// </summary>
public static class GarwoodInterval
{
    /// <summary>Two-sided exact interval of the mean count, equal tails; closed at both ends.</summary>
    /// <param name="events">Events counted, zero or more. Zero gives a lower limit of zero.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>Limits in events.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Garwood 1936, Biometrika 28; gamma form as in NIST/SEMATECH e-Handbook 8.4.5.1.</remarks>
    public static Interval Estimate(int events, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Confidences.Check(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(Lower(events, tail), Upper(events, tail), confidence);
    }

    /// <summary>One-sided exact upper limit of the mean count.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="confidence">One-sided confidence, above 0 and below 1: 0.95 and no event give 2.996.</param>
    /// <returns>The limit, in events.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Garwood 1936, Biometrika 28.</remarks>
    public static double UpperLimit(int events, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Confidences.Check(confidence);
        return Upper(events, 1 - confidence);
    }

    private static double Lower(int events, double tail) => events == 0 ? 0 : Quantile.Gamma(tail, events);

    private static double Upper(int events, double tail) =>
        events == 0 ? -Math.Log(tail) : Quantile.Gamma(1 - tail, events + 1.0);
}
