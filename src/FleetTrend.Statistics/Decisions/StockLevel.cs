using MathNet.Numerics;

namespace FleetTrend.Statistics.Decisions;

/// <summary>The smallest stock that covers a random demand with a stated chance.</summary>
/// <param name="Stock">Parts to hold.</param>
/// <param name="Covered">Chance that demand does not exceed them.</param>
public sealed record StockLevel(int Stock, double Covered)
{
    /// <summary>For Poisson demand.</summary>
    /// <param name="mean">Expected demand, zero or more.</param>
    /// <param name="serviceLevel">Chance to be reached, in (0, 1).</param>
    /// <returns>The stock and the chance it reaches.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Source: quantile of the Poisson distribution (textbook).</remarks>
    public static StockLevel ForPoisson(double mean, double serviceLevel)
    {
        CheckDemand(mean, serviceLevel);
        return Smallest(mean, serviceLevel, k => mean == 0 ? 1 : SpecialFunctions.GammaUpperRegularized(k + 1.0, mean));
    }

    /// <summary>For demand that spreads more than Poisson.</summary>
    /// <param name="mean">Expected demand, zero or more.</param>
    /// <param name="size">Size of the negative binomial distribution, above zero: its variance is mean + mean² / size.</param>
    /// <param name="serviceLevel">Chance to be reached, in (0, 1).</param>
    /// <returns>The stock and the chance it reaches.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Source: quantile of the negative binomial distribution (textbook).</remarks>
    public static StockLevel ForNegativeBinomial(double mean, double size, double serviceLevel)
    {
        CheckDemand(mean, serviceLevel);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(size);
        return Smallest(
            mean, serviceLevel, k => mean == 0 ? 1 : SpecialFunctions.BetaRegularized(size, k + 1.0, size / (size + mean)));
    }

    /// <summary>The smallest whole number at which a rising chance reaches a level: doubling, then halving.</summary>
    private static StockLevel Smallest(double mean, double level, Func<int, double> atMost)
    {
        if (atMost(0) >= level)
            return new StockLevel(0, atMost(0));
        var (low, high) = (0, Math.Max(1, (int)mean));
        while (atMost(high) < level)
            (low, high) = (high, checked(2 * high));
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            if (atMost(middle) >= level)
                high = middle;
            else
                low = middle;
        }
        return new StockLevel(high, atMost(high));
    }

    private static void CheckDemand(double mean, double serviceLevel)
    {
        if (!double.IsFinite(mean) || mean < 0)
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "Expected demand is finite, zero or more.");
        if (!(serviceLevel is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(serviceLevel), serviceLevel, "A service level lies strictly between 0 and 1.");
    }
}
