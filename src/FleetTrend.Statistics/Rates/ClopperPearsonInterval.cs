namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Exact limits of a share, when so many of a known number of things looked at had it: each limit is the share at which the
/// number seen, or a more extreme one, has the stated tail. Coverage is never below the confidence stated.
/// </summary>
public static class ClopperPearsonInterval
{
    /// <summary>Two-sided exact interval of the share, equal tails; closed at both ends.</summary>
    /// <param name="events">Things that had it, zero or more.</param>
    /// <param name="trials">Things looked at, one or more, not below <paramref name="events"/>.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>Limits in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Clopper and Pearson 1934, Biometrika 26.</remarks>
    public static Interval Estimate(int events, int trials, double confidence = 0.95)
    {
        Check(events, trials);
        Confidences.Check(confidence);
        var tail = (1 - confidence) / 2;
        var lower = events == 0 ? 0 : Share(Quantile.BetaOdds(tail, events, trials - events + 1.0));
        return new Interval(lower, Upper(events, trials, tail), confidence);
    }

    /// <summary>One-sided exact upper limit of the share: none of ten gives 0.2589 at 95 percent.</summary>
    /// <param name="events">Things that had it, zero or more.</param>
    /// <param name="trials">Things looked at, one or more, not below <paramref name="events"/>.</param>
    /// <param name="confidence">One-sided confidence, above 0 and below 1.</param>
    /// <returns>The limit, in (0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Clopper and Pearson 1934, Biometrika 26.</remarks>
    public static double UpperLimit(int events, int trials, double confidence = 0.95)
    {
        Check(events, trials);
        Confidences.Check(confidence);
        return Upper(events, trials, 1 - confidence);
    }

    private static double Upper(int events, int trials, double tail) =>
        events == trials ? 1 : Share(Quantile.BetaOdds(1 - tail, events + 1.0, trials - events));

    private static double Share(double odds) => odds / (1 + odds);

    private static void Check(int events, int trials)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(events, trials);
    }
}
