using FleetTrend.Statistics.Changes;

namespace FleetTrend.Statistics.Quiet;

/// <summary>All classes of condition together: what each unit was found to have, and what the others would have had, by period.</summary>
public static class CombinedPanel
{
    /// <summary>Puts the classes together.</summary>
    /// <param name="classes">One panel per class, with the same periods; units are joined by name.</param>
    /// <param name="lastPeriod">The last period that is known.</param>
    /// <returns>
    /// A panel with one location, whose exposure is the number of findings expected at the rates of the other units, class by class and location by
    /// location, as known at the end of the last period. A class in which the others were not watched is left out.
    /// </returns>
    public static WatchedPanel Build(IReadOnlyList<WatchedPanel> classes, int lastPeriod)
    {
        ArgumentNullException.ThrowIfNull(classes);
        var units = new Dictionary<string, (double[] Expected, List<UnitFinding> Findings)>(StringComparer.Ordinal);
        foreach (var panel in classes)
            Add(panel, lastPeriod, units);
        var years = classes.Count == 0 ? 1 : classes[0].PeriodYears;
        return new WatchedPanel(
            lastPeriod + 1, years, [new ChangeScope("", [], 1)],
            [.. units.OrderBy(u => u.Key, StringComparer.Ordinal).Where(u => u.Value.Expected.Any(e => e > 0))
                .Select(u => Unit(u.Key, u.Value.Expected, u.Value.Findings))]);
    }

    private static void Add(WatchedPanel panel, int lastPeriod, Dictionary<string, (double[] Expected, List<UnitFinding> Findings)> units)
    {
        var counts = new PanelCounts(panel, [.. panel.Units.Select(u => u.Findings)]);
        var rates = new double[panel.Locations];
        var found = new int[panel.Locations];
        foreach (var unit in panel.Units.Where(u => u.FirstPeriod <= lastPeriod))
        {
            Array.Clear(found);
            foreach (var finding in unit.Findings.Where(f => f.Period <= lastPeriod))
                found[finding.Location]++;
            if (!counts.TryRates(lastPeriod, unit.Until(lastPeriod), found, rates))
                continue;
            if (!units.TryGetValue(unit.Name, out var all))
                units.Add(unit.Name, all = (new double[lastPeriod + 1], []));
            for (var p = unit.FirstPeriod; p <= Math.Min(unit.LastPeriod, lastPeriod); p++)
                all.Expected[p] += Expected(unit, p, rates);
            all.Findings.AddRange(unit.Findings.Where(f => f.Period <= lastPeriod).Select(f => f with { Location = 0 }));
        }
    }

    private static double Expected(WatchedUnit unit, int period, double[] rates)
    {
        var now = unit.Until(period);
        var before = unit.Until(period - 1);
        var sum = 0.0;
        for (var l = 0; l < rates.Length; l++)
            sum += rates[l] * Math.Max(0, now[l] - before[l]);
        return sum;
    }

    private static WatchedUnit Unit(string name, double[] expected, List<UnitFinding> findings)
    {
        var first = Math.Min(Array.FindIndex(expected, e => e > 0), findings.Select(f => f.Period).DefaultIfEmpty(int.MaxValue).Min());
        return new WatchedUnit(name, first, [.. expected.Skip(first).Select(e => new[] { e })], findings);
    }
}
