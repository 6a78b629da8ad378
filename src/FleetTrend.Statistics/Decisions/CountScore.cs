using FleetTrend.Statistics.Rates;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// How many were foreseen and how many found, with the counts that the forecast leaves open: by chance, by what was not known of the life
/// distributions, and by
/// how much units (aircraft) differ.
/// </summary>
/// <remarks>
/// The count has the mean foreseen; its variance is that of independent chances times the dispersion, plus that of the fitted distributions (delta
/// method). The
/// dispersion is Pearson's between units, each beside its share of what was found, taken with as many degrees of freedom of units that do not differ as
/// <see cref="SettledUnits"/>, and is 1 at least. Fewer than five units: a coefficient of variation of one half is assumed. Limits are those of a
/// Poisson count whose
/// mean varies by a gamma distribution; of a binomial count where the variance is below the mean.
/// Source: McCullagh and Nelder, Generalized Linear Models, 1989, chapter 4.5 (dispersion); Meeker and Escobar, Statistical Methods for Reliability
/// Data, 1998,
/// chapter 12.
/// </remarks>
public sealed record CountScore
{
    private const int SettledUnits = 10;
    private const int FewestUnits = 5;
    private const double AssumedVariation = 0.5;

    private readonly double chanceVariance;
    private readonly double fitVariance;
    private readonly double degrees;

    private CountScore(double chanceVariance, double fitVariance, double degrees) =>
        (this.chanceVariance, this.fitVariance, this.degrees) = (chanceVariance, fitVariance, degrees);

    /// <summary>How many chances.</summary>
    public required int Count { get; init; }

    /// <summary>Their sum: how many were foreseen.</summary>
    public required double Expected { get; init; }

    /// <summary>How many happened.</summary>
    public required int Found { get; init; }

    /// <summary>Least and greatest of the chances.</summary>
    public required (double From, double To) Chances { get; init; }

    /// <summary>Variance of the count of independent chances, times how much more it is between units.</summary>
    public required double Dispersion { get; init; }

    /// <summary>Compares chances with what happened, all of them and in groups of equal size by the chance, the smallest first.</summary>
    /// <param name="chances">The chances, in any order.</param>
    /// <param name="groups">How many groups; none where there are fewer chances.</param>
    public static (CountScore All, IReadOnlyList<CountScore> Groups) Compare(IReadOnlyList<ScoredChance> chances, int groups)
    {
        ArgumentNullException.ThrowIfNull(chances);
        ScoredChance[] sorted = [.. chances.OrderBy(c => c.Chance).ThenBy(c => c.Happened)];
        var units = sorted.GroupBy(c => c.Unit).Select(g => (Expected: g.Sum(c => c.Chance), Found: g.Count(c => c.Happened))).ToList();
        var (dispersion, assumed) = Spread(units, sorted);
        var freedom = SettledUnits + units.Count - 1;
        if (groups > sorted.Length)
            groups = 0;
        return (Of(sorted), [.. Enumerable.Range(0, groups).Select(i => Of(sorted[Start(i)..Start(i + 1)]))]);

        CountScore Of(ScoredChance[] some) => Sum(some, dispersion, assumed, freedom);

        int Start(int group) => (int)((long)group * sorted.Length / groups);
    }

    /// <summary>Least and greatest count that the chances leave open.</summary>
    /// <param name="confidence">How often the count lies between them where the chances are true, at least; in (0, 1).</param>
    public (int Lower, int Upper) Limits(double confidence)
    {
        Confidences.Check(confidence);
        var more = StudentT.InvCDF(0, 1, degrees, (1 + confidence) / 2) / Quantile.NormalTwoSided(confidence);
        var (lower, upper) = CountDistribution.WithMoments(Expected, (chanceVariance * Dispersion * more * more) + fitVariance).Limits(confidence);
        return ((int)lower, (int)upper);
    }

    /// <summary>Whether what was found is outside of the limits.</summary>
    public bool IsOff(double confidence) => Limits(confidence) is var (lower, upper) && (Found < lower || Found > upper);

    private static (double Dispersion, double Assumed) Spread(List<(double Expected, int Found)> units, ScoredChance[] chances)
    {
        var (expected, found) = (units.Sum(u => u.Expected), units.Sum(u => u.Found));
        var variance = chances.Sum(c => c.Chance * (1 - c.Chance));
        if (variance <= 0)
            return (1, 0);
        var squares = 0.0;
        var ratio = found / expected;
        foreach (var unit in units.Where(u => u.Expected > 0 && u.Expected < expected))
            squares += Math.Pow(unit.Found - (ratio * unit.Expected), 2) / (1 - (unit.Expected / expected));
        var own = units.Count > 1 && found > 0 ? squares / (ratio * variance) : 1;
        var shrunk = (SettledUnits + ((units.Count - 1) * own)) / (SettledUnits + units.Count - 1);
        var assumed = units.Count < FewestUnits ? AssumedVariation * AssumedVariation * units.Sum(u => u.Expected * u.Expected) / (expected * expected) : 0;
        return (Math.Max(1, shrunk), assumed);
    }

    private static CountScore Sum(ScoredChance[] chances, double dispersion, double assumed, double degrees)
    {
        var expected = chances.Sum(c => c.Chance);
        var fits = chances.GroupBy(c => c.Law).Sum(g => Math.Pow(g.Sum(c => c.FirstError), 2) + Math.Pow(g.Sum(c => c.SecondError), 2));
        return new CountScore(chances.Sum(c => c.Chance * (1 - c.Chance)), fits + (assumed * expected * expected), degrees)
        {
            Count = chances.Length,
            Expected = expected,
            Found = chances.Count(c => c.Happened),
            Chances = chances.Length == 0 ? (0, 0) : (chances[0].Chance, chances[^1].Chance),
            Dispersion = dispersion,
        };
    }
}
