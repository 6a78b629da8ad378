using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>Parts with a life, replaced where a look finds them failed; exposure is the rise of the cumulative hazard fitted to all of them.</summary>
internal static class CallLives
{
    public static List<WatchedUnit> Draw(CallFleet fleet, Random random, Func<int, int, double, double> factor)
    {
        var tails = new List<(int First, List<(int Period, int Location, double From, double To, bool Failed)> Spans)>();
        var lives = new List<Life>();
        for (var i = 0; i < fleet.Aircraft; i++)
        {
            var (level, perDay, entry, looks) = fleet.Tail(random, i);
            var spans = new List<(int, int, double, double, bool)>();
            for (var l = 0; l < fleet.Locations; l++)
                Follow(fleet, random, level, perDay, entry, looks, day => factor(i, l, day), l, spans, lives);
            tails.Add((CallFleet.PeriodOf(entry), spans));
        }

        var fit = LifeFit.Fit(LifeDistribution.Weibull, lives).Match(f => (1 / f.Sigma.Value, Math.Exp(f.Mu.Value)), _ => (1.0, 1000.0));
        return [.. tails.Select((t, i) => Unit(fleet, $"{i + 1}", t.First, t.Spans, age => Math.Pow(age / fit.Item2, fit.Item1)))];
    }

    private static void Follow(
        CallFleet fleet, Random random, double level, double perDay, double entry, List<double> looks, Func<double, double> factor, int location,
        List<(int Period, int Location, double From, double To, bool Failed)> spans, List<Life> lives)
    {
        double Hazard(double age) => Math.Pow(age / fleet.LifeScale, fleet.LifeShape);
        var age = random.NextDouble() < 0.5 ? 0 : Draws.Between(random, 0, 0.8 * fleet.LifeScale);
        var (start, since) = (age, entry);
        foreach (var day in looks)
        {
            var to = age + (day - since) * perDay;
            const int steps = 8;
            var hazard = Enumerable.Range(0, steps).Sum(s =>
                factor(since + (s + 0.5) / steps * (day - since))
                    * (Hazard(age + (s + 1.0) / steps * (to - age)) - Hazard(age + (double)s / steps * (to - age))));
            var failed = random.NextDouble() < 1 - Math.Exp(-level * hazard);
            spans.Add((CallFleet.PeriodOf(day), location, age, to, failed));
            if (failed)
                lives.Add(new Life(age, to, start));
            (age, since) = (failed ? 0 : to, day);
            if (failed)
                start = 0;
        }

        if (age > start)
            lives.Add(new Life(age, double.PositiveInfinity, start));
    }

    private static WatchedUnit Unit(
        CallFleet fleet, string name, int first, List<(int Period, int Location, double From, double To, bool Failed)> spans, Func<double, double> hazard)
    {
        var exposure = Enumerable.Range(first, fleet.Periods - first).Select(_ => new double[fleet.Locations]).ToList();
        foreach (var span in spans)
            exposure[span.Period - first][span.Location] += Math.Max(0, hazard(span.To) - hazard(span.From));
        return new WatchedUnit(name, first, exposure, spans.Where(s => s.Failed).Select(s => new UnitFinding(s.Period, s.Location)));
    }
}
