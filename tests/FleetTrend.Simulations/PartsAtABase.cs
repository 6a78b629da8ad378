using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Simulations;

/// <summary>How long parts last at a base: Weibull lives, on aircraft that may differ, looked at and replaced when found failed.</summary>
/// <param name="Scale">Scale, hours.</param>
/// <param name="Shape">Shape.</param>
internal sealed record PartsAtABase(double Scale, double Shape)
{
    /// <summary>Share of new parts that were fitted badly, and fail at 40 h on average.</summary>
    public double BadlyFitted { get; init; }

    /// <summary>Fewest hours that an aircraft is watched.</summary>
    public double From { get; init; } = 800;

    /// <summary>Most hours that an aircraft is watched.</summary>
    public double To { get; init; } = 2400;

    /// <summary>Places of the part on an aircraft.</summary>
    public int Places { get; init; } = 6;

    /// <summary>The lives of each aircraft, whose hazards differ by a gamma distribution of mean one with this coefficient of variation.</summary>
    public Life[][] Draw(Random random, int aircraft, double variation) =>
        [.. Enumerable.Range(0, aircraft).Select(_ => OfAircraft(random, Hazard(random, variation)))];

    /// <summary>Lives of this number and of another on the same aircraft.</summary>
    public UnitLives[] DrawBeside(PartsAtABase other, Random random, int aircraft, double variation) =>
        [.. Enumerable.Range(0, aircraft).Select(_ => Hazard(random, variation))
            .Select(h => new UnitLives(OfAircraft(random, h), other.OfAircraft(random, h)))];

    private static double Hazard(Random random, double variation) =>
        Draws.Frailty(random, variation == 0 ? double.PositiveInfinity : 1 / (variation * variation));

    private Life[] OfAircraft(Random random, double hazard)
    {
        var scale = Scale * Math.Pow(hazard, -1 / Shape);
        var end = Draws.Between(random, From, To);
        List<double> looks = [0];
        while (looks[^1] < end) looks.Add(Math.Round(looks[^1] + Draws.Between(random, 70, 130), 1));
        List<Life> lives = [];
        for (var place = 0; place < Places; place++)
        {
            var entry = random.NextDouble() < 0.5 ? 0 : Math.Round(Draws.Between(random, 0, 800), 1);
            for (var at = 0; at < looks.Count - 1; entry = 0) at = AddLife(random, lives, looks, at, entry, scale);
        }

        return [.. lives];
    }

    /// <summary>One life from a look on; gives the look at which the next one starts.</summary>
    private int AddLife(Random random, List<Life> lives, List<double> looks, int at, double entry, double scale)
    {
        var isBad = entry == 0 && BadlyFitted > 0 && random.NextDouble() < BadlyFitted;
        var age = isBad
            ? Exponential.Sample(random, 1 / 40.0)
            : scale * Math.Pow(Math.Pow(entry / scale, Shape) + Exponential.Sample(random, 1), 1 / Shape);
        var found = at + 1;
        while (found < looks.Count && entry + looks[found] - looks[at] < age) found++;
        if (found == looks.Count)
        {
            lives.Add(Life.GoodAt(AgeAt(looks.Count - 1), entry));
            return found;
        }

        lives.Add(Life.FailedBetween(AgeAt(found - 1), AgeAt(found), entry));
        return found;

        double AgeAt(int look) => Math.Round(entry + looks[look] - looks[at], 1);
    }
}
