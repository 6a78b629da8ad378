using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Decisions;

/// <summary>Parts that will be needed in the time ahead, over all positions: mean, prediction interval, and stock.</summary>
/// <remarks>
/// A part that fails is found at its next look and renewed there; a renewed one may fail again. Aircraft are independent given the life; the hours that one
/// flies and its looks are common to its parts. What is not known of the life is integrated over: fits along the direction in which the mean demand moves
/// most, weighted as normal by the covariance of the fitted parameters.
/// Source: renewal counts (Barlow and Proschan 1965, chapter 3) at looks; prediction with an estimated life: Meeker and Escobar 1998, chapter 12.
/// </remarks>
public sealed class DemandForecast
{
    /// <summary>Looks beyond so many are not followed one by one.</summary>
    internal const int MostLooks = 400;

    /// <summary>Chances smaller than this are dropped at the upper end.</summary>
    internal const double Negligible = 1e-12;

    private readonly double[] chances;

    private DemandForecast(double[] chances)
    {
        this.chances = chances;
        for (var k = 0; k < chances.Length; k++)
            Mean += k * chances[k];
    }

    /// <summary>Expected number of parts.</summary>
    public double Mean { get; }

    /// <summary>Chances of 0, 1, 2 and so on parts.</summary>
    public IReadOnlyList<double> Chances => chances;

    /// <summary>A forecast with given chances of 0, 1, 2 and so on parts, scaled to sum to one.</summary>
    /// <exception cref="ArgumentException">There are none, or one is negative.</exception>
    public static DemandForecast FromChances(IEnumerable<double> chances)
    {
        double[] given = [.. chances];
        var sum = given.Sum();
        if (!(sum > 0) || Array.Exists(given, c => c < 0))
            throw new ArgumentException("Chances are not negative, and at least one is above zero.", nameof(chances));
        return new DemandForecast(Array.ConvertAll(given, c => c / sum));
    }

    /// <summary>The smallest range of whole numbers that leaves out at most half of the rest at either end.</summary>
    /// <param name="confidence">Confidence of the prediction interval, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    public Interval Interval(double confidence)
    {
        Confidences.Check(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(Quantile(tail), Quantile(1 - tail), confidence);
    }

    /// <summary>The smallest stock that covers the demand with a stated chance.</summary>
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

    /// <summary>The demand of both together, which are independent.</summary>
    public DemandForecast Plus(DemandForecast other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new DemandForecast(DemandChances.Sum(chances, other.chances));
    }

    /// <summary>The same with so many more that are needed for certain.</summary>
    /// <param name="certain">How many, zero or more.</param>
    public DemandForecast Plus(int certain)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(certain);
        return certain == 0 ? this : new DemandForecast([.. new double[certain], .. chances]);
    }

    /// <summary>The same where each failure takes a number of parts of its own: sisters go out with it, or it is repaired and takes none.</summary>
    /// <param name="partsPerFailure">Chances that a failure takes 0, 1, 2 and so on parts; they sum to one.</param>
    /// <remarks>Source: compound distribution by Horner's rule (textbook).</remarks>
    public DemandForecast Compound(IReadOnlyList<double> partsPerFailure)
    {
        ArgumentNullException.ThrowIfNull(partsPerFailure);
        double[] each = [.. partsPerFailure];
        if (each is [0, 1])
            return this;
        double[] sum = [chances[^1]];
        for (var k = chances.Length - 2; k >= 0; k--)
        {
            sum = DemandChances.Sum(sum, each);
            sum[0] += chances[k];
        }

        return new DemandForecast(sum);
    }

    /// <summary>Forecasts failures found by each horizon.</summary>
    /// <param name="units">The aircraft with their parts, all of one life.</param>
    /// <param name="fit">The life as fitted, with its uncertainty.</param>
    /// <param name="goesOutGood">Chance, at each look, that a part which is good goes out all the same, in [0, 1): it counts for nothing and a new one comes in.</param>
    /// <returns>One forecast per horizon of the aircraft; none where there is no aircraft.</returns>
    /// <exception cref="ArgumentException">Aircraft differ in their number of horizons.</exception>
    public static IReadOnlyList<DemandForecast> Compute(IReadOnlyList<UnitInUse> units, LifeFit fit, double goesOutGood = 0)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Compute(units, LifeSpread.Along(units, fit), goesOutGood);
    }

    /// <summary>The same where the life is known.</summary>
    public static IReadOnlyList<DemandForecast> Compute(IReadOnlyList<UnitInUse> units, LifeModel life, double goesOutGood = 0) =>
        Compute(units, [(life, 1.0)], goesOutGood);

    private static DemandForecast[] Compute(IReadOnlyList<UnitInUse> units, IReadOnlyList<(LifeModel Life, double Weight)> lives, double goesOutGood)
    {
        ArgumentNullException.ThrowIfNull(units);
        if (!(goesOutGood is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(goesOutGood), goesOutGood, "must be a chance from 0 to below 1");
        var horizons = units.Count == 0 ? 0 : units[0].HoursAhead.Count;
        if (units.Any(u => u.HoursAhead.Count != horizons))
            throw new ArgumentException("All aircraft have the same horizons.", nameof(units));
        var mixed = Enumerable.Range(0, horizons).Select(_ => new DemandChances()).ToArray();
        foreach (var (life, weight) in lives)
        {
            var demand = UnitDemand.Sum(units, life, goesOutGood, horizons);
            for (var h = 0; h < horizons; h++)
                mixed[h].AddWeighted(demand[h], weight);
        }

        return Array.ConvertAll(mixed, m => FromChances(m.ToArray()));
    }

    private int Quantile(double probability)
    {
        var sum = 0.0;
        for (var k = 0; k < chances.Length; k++)
        {
            sum += chances[k];
            // The margin forgives the rounding of a sum of many chances, not more.
            if (sum >= probability - 1e-9)
                return k;
        }

        return chances.Length - 1;
    }
}
