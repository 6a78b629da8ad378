using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Simulations;

/// <summary>
/// Cracks that come back after weld repairs and after replacements: Weibull, on aircraft that may differ, looked at every 70 to 130 h. What came back is
/// repaired again, one way or the other.
/// </summary>
/// <param name="FirstMedian">Hours until half have come back after the first kind of action.</param>
/// <param name="SecondMedian">The same after the second.</param>
internal sealed record RepairsOfAFleet(double FirstMedian, double SecondMedian)
{
    /// <summary>Shape of both.</summary>
    public const double Shape = 1.8;

    /// <summary>Places of an aircraft where something was repaired.</summary>
    public int Places { get; init; } = 3;

    /// <summary>Fewest hours that an aircraft is watched after the first repair.</summary>
    public double From { get; init; } = 600;

    /// <summary>Most hours that it is watched.</summary>
    public double To { get; init; } = 2000;

    /// <summary>Share of repairs of the first kind.</summary>
    public double FirstShare { get; init; } = 0.5;

    /// <summary>The lives of repairs by aircraft, whose hazards differ by a gamma distribution of mean one with this coefficient of variation.</summary>
    public UnitLives[] Draw(Random random, int aircraft, double variation) =>
        [.. Enumerable.Range(0, aircraft).Select(_ => OfAircraft(random, variation, (_, _) => { }))];

    /// <summary>Of all repairs made, the share come back by some hours, by the kind of action; of a fleet so large that it shows no error.</summary>
    public (double[] First, double[] Second) TrueShares(double variation, params double[] hours)
    {
        var random = new Random(1);
        var (first, second) = (new List<double>(), new List<double>());
        for (var i = 0; i < 50_000; i++)
            OfAircraft(random, variation, (isFirst, age) => (isFirst ? first : second).Add(age));
        return (Shares(first), Shares(second));

        double[] Shares(List<double> ages) => Array.ConvertAll(hours, h => ages.Count(a => a <= h) / (double)ages.Count);
    }

    private UnitLives OfAircraft(Random random, double variation, Action<bool, double> tell)
    {
        var longer = Math.Pow(Draws.Frailty(random, variation == 0 ? double.PositiveInfinity : 1 / (variation * variation)) * Math.Log(2), -1 / Shape);
        var end = Draws.Between(random, From, To);
        List<double> looks = [0];
        while (looks[^1] < end) looks.Add(Math.Round(looks[^1] + Draws.Between(random, 70, 130), 1));
        var (first, second) = (new List<Life>(), new List<Life>());
        for (var place = 0; place < Places; place++)
        {
            for (var at = 0; at < looks.Count - 1;)
            {
                var isFirst = random.NextDouble() < FirstShare;
                var age = (isFirst ? FirstMedian : SecondMedian) * longer * Math.Pow(Exponential.Sample(random, 1), 1 / Shape);
                tell(isFirst, age);
                var found = at + 1;
                while (found < looks.Count && looks[found] - looks[at] < age) found++;
                (isFirst ? first : second).Add(found == looks.Count ? Life.GoodAt(looks[^1] - looks[at])
                    : Life.FailedBetween(looks[found - 1] - looks[at], looks[found] - looks[at]));
                at = found;
            }
        }

        return new UnitLives(first, second);
    }
}
