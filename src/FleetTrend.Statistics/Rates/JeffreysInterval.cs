namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Credible limits of the mean of a Poisson count under Jeffreys' prior, which is proportional to one over the root of the
/// mean. On average over means it covers close to its credibility.
/// </summary>
public static class JeffreysInterval
{
    /// <summary>Equal-tailed credible interval of the mean count; closed at both ends.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="confidence">Credibility, above 0 and below 1.</param>
    /// <returns>Limits in events: quantiles of the gamma distribution of shape events + 1/2. The lower one is above zero even without events.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or credibility outside (0, 1).</exception>
    /// <remarks>Source: Jeffreys 1946, Proc. R. Soc. A 186; the interval as in Brown, Cai and DasGupta 2003, Statistica Sinica 13 (from memory).</remarks>
    public static Interval Estimate(int events, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Confidences.Check(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(Quantile.Gamma(tail, events + 0.5), Quantile.Gamma(1 - tail, events + 0.5), confidence);
    }
}
