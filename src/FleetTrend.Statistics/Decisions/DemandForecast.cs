namespace FleetTrend.Statistics.Decisions;

/// <summary>Parts that will fail in the time ahead, over all positions: mean, prediction interval, and stock.</summary>
public sealed class DemandForecast
{
    private readonly double[] chances;

    private DemandForecast(double[] chances, int parts, double confidence)
    {
        this.chances = chances;
        Parts = parts;
        for (var k = 0; k < chances.Length; k++)
            Mean += k * chances[k];
        var tail = (1 - confidence) / 2;
        Interval = new Interval(Quantile(tail), Quantile(1 - tail), confidence);
    }

    /// <summary>Positions behind the forecast.</summary>
    public int Parts { get; }

    /// <summary>Expected failures.</summary>
    public double Mean { get; }

    /// <summary>Prediction interval of the number of failures, whole numbers, both ends included.</summary>
    public Interval Interval { get; }

    /// <summary>Chances of 0, 1, 2 and so on failures.</summary>
    public IReadOnlyList<double> Chances => chances;

    /// <summary>The smallest stock that covers the failures with a stated chance.</summary>
    /// <param name="serviceLevel">The chance, in (0, 1).</param>
    /// <returns>The stock and the chance it reaches.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is outside (0, 1).</exception>
    /// <remarks>Source: quantile of the forecast distribution.</remarks>
    public StockLevel Stock(double serviceLevel)
    {
        Confidences.Check(serviceLevel);
        var stock = Quantile(serviceLevel);
        return new StockLevel(stock, Math.Min(1, chances.Take(stock + 1).Sum()));
    }

    /// <summary>Forecasts demand.</summary>
    /// <param name="parts">The parts in service.</param>
    /// <param name="lives">
    /// The life, or several equally likely ones (draws from the fit's uncertainty), so that the interval carries not only
    /// chance but what is not known of the life; one or more.
    /// </param>
    /// <param name="confidence">Confidence of the prediction interval, in (0, 1).</param>
    /// <returns>The forecast; with no part it is zero for certain.</returns>
    /// <exception cref="ArgumentException">No life was given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: renewal counts by convolution (Barlow and Proschan 1965, chapter 3), summed over independent positions; draws
    /// as in Meeker and Escobar 1998, chapter 12. Failures beyond the first are placed to 1/128 of the hours ahead.
    /// </remarks>
    public static DemandForecast Compute(
        IReadOnlyList<PartInUse> parts, IReadOnlyList<WeibullLife> lives, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (lives.Count == 0)
            throw new ArgumentException("A forecast needs at least one life.", nameof(lives));
        var groups = parts.GroupBy(p => p).Select(g => (Part: g.Key, Count: g.Count())).ToList();
        var mixed = Array.Empty<double>();
        foreach (var life in lives)
        {
            var distribution = CountDistribution.Zero;
            foreach (var (part, count) in groups)
                distribution = distribution.Plus(RenewalCount.Compute(part, life).Times(count));
            var own = distribution.FromZero();
            if (own.Length > mixed.Length)
                Array.Resize(ref mixed, own.Length);
            for (var k = 0; k < own.Length; k++)
                mixed[k] += own[k] / lives.Count;
        }
        return new DemandForecast(mixed, parts.Count, confidence);
    }

    private int Quantile(double probability)
    {
        var sum = 0.0;
        for (var k = 0; k < chances.Length; k++)
        {
            sum += chances[k];
            // The margin forgives the rounding of a sum of many chances, not more.
            if (sum >= probability - 1e-12)
                return k;
        }
        return chances.Length - 1;
    }
}
