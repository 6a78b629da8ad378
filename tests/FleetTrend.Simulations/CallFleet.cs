using FleetTrend.Statistics.Changes;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Simulations;

/// <summary>A fleet that is looked at, with or without a change in it, as the calls see it.</summary>
internal sealed record CallFleet
{
    private const double DaysPerYear = 365.25;
    private const int PeriodDays = 28;

    public int Aircraft { get; init; } = 30;

    public double Years { get; init; } = 4;

    /// <summary>Shape of the gamma distribution of aircraft's levels.</summary>
    public double Shape { get; init; } = 8;

    public double HoursPerYear { get; init; } = 470;

    public double LookHours { get; init; } = 100;

    /// <summary>Findings per 1,000 h of an aircraft, over all locations.</summary>
    public double Rate { get; init; } = 3.6;

    /// <summary>Rates of the locations beside each other, repeated; a bank is a half of the locations.</summary>
    public IReadOnlyList<double> Beside { get; init; } = [1];

    public int Locations { get; init; } = 12;

    /// <summary>Chance that a finding brings one more with it.</summary>
    public double Bunch { get; init; }

    /// <summary>Share of the looks at a location that do not happen.</summary>
    public double Missed { get; init; }

    /// <summary>Share of the aircraft that join later, in the first two years.</summary>
    public double Late { get; init; }

    /// <summary>Level of the aircraft number one; zero: drawn like the others.</summary>
    public double LevelOfFirst { get; init; }

    /// <summary>Times the rate from the change on; one: nothing changes.</summary>
    public double Ratio { get; init; } = 1;

    /// <summary>Index of the scope that changes: 0 the whole aircraft, 1 its first bank, 3 its first location.</summary>
    public int Scope { get; init; }

    /// <summary>How many aircraft change: one, or all of a base.</summary>
    public int Changing { get; init; } = 1;

    /// <summary>Weibull shape of the parts' lives; zero: findings come at a rate.</summary>
    public double LifeShape { get; init; }

    /// <summary>Weibull scale of the parts' lives, hours.</summary>
    public double LifeScale { get; init; } = 900;

    /// <summary>Aircraft of a base; zero: the aircraft are the units, else the bases are.</summary>
    public int AircraftOfABase { get; init; }

    /// <summary>Units that change.</summary>
    public int ChangingUnits => Ratio == 1 ? 0 : AircraftOfABase > 0 ? 1 : Changing;

    public int Periods => (int)(Years * DaysPerYear / PeriodDays);

    public static double PeriodYears => PeriodDays / DaysPerYear;

    public IReadOnlyList<ChangeScope> Scopes => ChangeScope.Spread(
        "aircraft", [.. Enumerable.Range(0, Locations).Select(l => $"location {l + 1}")],
        Locations < 4
            ? []
            : [("left bank", [.. Enumerable.Range(0, Locations / 2)]), ("right bank", [.. Enumerable.Range(Locations / 2, Locations - Locations / 2)])]);

    /// <summary>Draws the fleet; aircraft that change come first.</summary>
    /// <param name="random">Seeded numbers.</param>
    /// <param name="changeDay">Day of the change.</param>
    /// <returns>Aircraft, or the bases with the aircraft beside them.</returns>
    public (WatchedPanel Units, WatchedPanel? Members) Draw(Random random, double changeDay)
    {
        var changed = Scopes[Scope];
        double Factor(int aircraft, int location, double day) =>
            aircraft < Changing && day > changeDay && (changed.IsWhole || changed.Locations.Contains(location)) ? Ratio : 1;
        var tails = LifeShape > 0 ? CallLives.Draw(this, random, Factor) : [.. Enumerable.Range(0, Aircraft).Select(i => AtRates(random, i, Factor))];
        var aircraft = new WatchedPanel(Periods, PeriodYears, Scopes, tails);
        return AircraftOfABase == 0
            ? (aircraft, null)
            : (new WatchedPanel(Periods, PeriodYears, Scopes, [.. tails.Chunk(AircraftOfABase).Select(Together)]), aircraft);
    }

    /// <summary>Level of an aircraft, its hours a day, the day it joins, and the days on which it is looked at.</summary>
    public (double Level, double PerDay, double Entry, List<double> Looks) Tail(Random random, int index)
    {
        var level = index == 0 && LevelOfFirst > 0 ? LevelOfFirst : Draws.Frailty(random, Shape);
        var perDay = HoursPerYear / DaysPerYear * Draws.Between(random, 0.8, 1.2);
        var entry = random.NextDouble() < Late ? Draws.Between(random, 0, 2 * DaysPerYear) : 0;
        var looks = new List<double>();
        for (var day = entry + random.NextDouble() * LookHours / perDay; (int)(day / PeriodDays) < Periods;
            day += LookHours / perDay * Draws.Between(random, 0.9, 1.1))
        {
            looks.Add(day);
        }

        return (level, perDay, entry, looks);
    }

    public static int PeriodOf(double day) => (int)(day / PeriodDays);

    private WatchedUnit AtRates(Random random, int index, Func<int, int, double, double> factor)
    {
        var weights = Enumerable.Range(0, Locations).Select(l => Beside[l % Beside.Count]).ToArray();
        double[] rates = [.. weights.Select(w => w / weights.Sum() * Rate / 1000)];
        var (level, perDay, entry, looks) = Tail(random, index);
        var first = PeriodOf(entry);
        var exposure = Enumerable.Range(first, Periods - first).Select(_ => new double[Locations]).ToList();
        var findings = new List<UnitFinding>();
        var since = Enumerable.Repeat(entry, Locations).ToArray();
        var unseen = new int[Locations];
        var last = entry;
        foreach (var day in looks)
        {
            Arise(random, level, rates, (location, at) => factor(index, location, at), last, day, perDay, unseen);
            last = day;
            for (var l = 0; l < Locations; l++)
            {
                if (random.NextDouble() < Missed)
                    continue;
                exposure[PeriodOf(day) - first][l] += (day - since[l]) * perDay;
                since[l] = day;
                for (; unseen[l] > 0; unseen[l]--)
                    findings.Add(new UnitFinding(PeriodOf(day), l));
            }
        }

        return new WatchedUnit($"{index + 1}", first, exposure, findings);
    }

    /// <summary>The aircraft of a base as one unit.</summary>
    private static WatchedUnit Together(WatchedUnit[] aircraft)
    {
        var (first, last) = (aircraft.Min(a => a.FirstPeriod), aircraft.Max(a => a.LastPeriod));
        return new WatchedUnit(
            $"base of {aircraft[0].Name}", first,
            [.. Enumerable.Range(first, last - first + 1).Select(p =>
                aircraft.Select(a => a.ExposureIn(p)).Aggregate((a, b) => [.. a.Zip(b, (x, y) => x + y)]))],
            aircraft.SelectMany(a => a.Findings));
    }

    private void Arise(
        Random random, double level, double[] rates, Func<int, double, double> factor, double from, double to, double perDay, int[] unseen)
    {
        const int steps = 8;
        for (var l = 0; l < rates.Length; l++)
        {
            var hours = 0.0;
            for (var s = 0; s < steps; s++)
                hours += factor(l, from + (s + 0.5) / steps * (to - from)) * (to - from) / steps * perDay;
            for (var n = Draws.Count(random, level * rates[l] * (1 - Bunch) * hours); n > 0; n--)
            {
                unseen[l]++;
                while (random.NextDouble() < Bunch)
                    unseen[random.NextDouble() < 0.5 ? l : Categorical.Sample(random, rates)]++;
            }
        }
    }
}
