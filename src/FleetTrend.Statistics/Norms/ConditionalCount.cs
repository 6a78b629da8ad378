namespace FleetTrend.Statistics.Norms;

/// <summary>
/// The count of one unit over strata, given each stratum's total: a sum of binomials. Its tails keep their digits however small they are:
/// far from the mean they are taken from the distribution whose odds are all multiplied by one factor, so that the count seen is its mean.
/// </summary>
/// <remarks>
/// Source: exponential change of measure, Esscher 1932, Skandinavisk Aktuarietidskrift 15; the sum itself is exact, nothing is approximated.
/// </remarks>
internal sealed class ConditionalCount
{
    /// <summary>A tail above this is taken from the distribution itself, whose chances below 1e-40 are left out.</summary>
    private const double SafeTail = 1e-25;

    private readonly List<(long Trials, double LogOdds)> strata = [];
    private CountDistribution distribution = CountDistribution.Zero;

    /// <summary>Adds a stratum: its events, this unit's exposure and that of the others, both above zero.</summary>
    internal void Add(long events, double own, double others)
    {
        strata.Add((events, Math.Log(own) - Math.Log(others)));
        distribution = distribution.Plus(CountDistribution.Binomial(events, own / (own + others)));
    }

    /// <summary>Chance of a count at least this high.</summary>
    internal double AtLeast(long count)
    {
        var tail = distribution.AtLeast(count);
        if (tail > SafeTail)
            return tail;
        return count == strata.Sum(s => s.Trials)
            ? Math.Exp(strata.Sum(s => -s.Trials * ElementaryFunctions.LogP1(Math.Exp(-s.LogOdds))))
            : Tilted(count, (tilted, k, x) => tilted.WeightedAtLeast(k, -x));
    }

    /// <summary>Chance of a count at most this high.</summary>
    internal double AtMost(long count)
    {
        var tail = distribution.AtMost(count);
        if (tail > SafeTail)
            return tail;
        return count == 0
            ? Math.Exp(strata.Sum(s => -s.Trials * ElementaryFunctions.LogP1(Math.Exp(s.LogOdds))))
            : Tilted(count, (tilted, k, x) => tilted.WeightedAtMost(k, -x));
    }

    /// <summary>
    /// The tail by the distribution with odds times e^x whose mean is the count; the weight back to the distribution itself is
    /// e^(-x) per event.
    /// </summary>
    private double Tilted(long count, Func<CountDistribution, long, double, double> weightedTail)
    {
        const double widest = 1500;
        var x = RootSearch.Find(
            y => strata.Sum(s => s.Trials / (1 + Math.Exp(-(s.LogOdds + y)))) - count, -widest, widest);
        var tilted = CountDistribution.Zero;
        var logWeight = -x * count;
        foreach (var (trials, logOdds) in strata)
        {
            tilted = tilted.Plus(CountDistribution.Binomial(trials, 1 / (1 + Math.Exp(-(logOdds + x)))));
            logWeight += trials * (LogOnePlusExp(logOdds + x) - LogOnePlusExp(logOdds));
        }
        return Math.Min(1, Math.Exp(logWeight) * weightedTail(tilted, count, x));
    }

    private static double LogOnePlusExp(double x) => Math.Max(0, x) + ElementaryFunctions.LogP1(Math.Exp(-Math.Abs(x)));
}
