using FleetTrend.Statistics.Changes;

namespace FleetTrend.Simulations;

/// <summary>An aircraft whose findings come at rates, with what each look found at every location.</summary>
/// <param name="Level">Times the norm.</param>
/// <param name="PerDay">Hours a day.</param>
/// <param name="Looks">Days of the looks, with findings by location.</param>
internal sealed record EffectTail(double Level, double PerDay, IReadOnlyList<(double Day, int[] Found)> Looks)
{
    /// <summary>Draws it, nothing changing.</summary>
    public static EffectTail Draw(CallFleet fleet, Random random, int index)
    {
        var (level, perDay, _, looks) = fleet.Tail(random, index);
        return new EffectTail(level, perDay, [.. looks.Select(day => (day, new int[fleet.Locations]))]).Redraw(fleet, random, -1, _ => 1);
    }

    /// <summary>The same aircraft, what is looked at after a day drawn anew.</summary>
    /// <param name="fleet">The fleet.</param>
    /// <param name="random">Seeded numbers.</param>
    /// <param name="from">The day.</param>
    /// <param name="factor">Times the rate, by day.</param>
    public EffectTail Redraw(CallFleet fleet, Random random, double from, Func<double, double> factor)
    {
        const int steps = 16;
        var drawn = new List<(double, int[])>();
        var last = 0.0;
        foreach (var (day, found) in Looks)
        {
            var days = Enumerable.Range(0, steps).Sum(s => factor(last + (s + 0.5) / steps * (day - last))) * (day - last) / steps;
            var mean = Level * fleet.Rate / 1000 / fleet.Locations * days * PerDay;
            drawn.Add((day, day <= from ? found : [.. found.Select(_ => Draws.Count(random, mean))]));
            last = day;
        }

        return this with { Looks = drawn };
    }

    /// <summary>As the calls see it.</summary>
    public WatchedUnit ToUnit(CallFleet fleet, int index)
    {
        var exposure = Enumerable.Range(0, fleet.Periods).Select(_ => new double[fleet.Locations]).ToList();
        var findings = new List<UnitFinding>();
        var last = 0.0;
        foreach (var (day, found) in Looks)
        {
            var period = CallFleet.PeriodOf(day);
            for (var l = 0; l < found.Length; l++)
            {
                exposure[period][l] += (day - last) * PerDay;
                findings.AddRange(Enumerable.Repeat(new UnitFinding(period, l), found[l]));
            }

            last = day;
        }

        return new WatchedUnit($"{index + 1}", 0, exposure, findings);
    }
}
