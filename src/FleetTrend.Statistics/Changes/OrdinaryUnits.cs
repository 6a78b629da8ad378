using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Changes;

/// <summary>Draws findings of a panel in which nothing changes: its own looks, rates, spread and bunches.</summary>
internal sealed class OrdinaryUnits
{
    private readonly WatchedPanel panel;
    private readonly RateSpread spread;
    private readonly double[][] cumulative;

    public OrdinaryUnits(WatchedPanel panel, RateSpread spread)
    {
        this.panel = panel;
        this.spread = spread;
        var rates = new double[panel.Locations];
        var counts = new PanelCounts(panel, [.. panel.Units.Select(u => u.Findings)]);
        if (panel.Periods == 0 || !counts.TryRates(panel.Periods - 1, new double[panel.Locations], new int[panel.Locations], rates))
            Array.Clear(rates);
        cumulative = [.. panel.Units.Select(u => Expected(u, rates))];
    }

    /// <summary>Findings of every unit, in the order of the units, by period.</summary>
    public IReadOnlyList<IReadOnlyList<UnitFinding>> Draw(Random random)
    {
        var findings = new IReadOnlyList<UnitFinding>[panel.Units.Count];
        for (var i = 0; i < findings.Length; i++)
            findings[i] = Draw(random, panel.Units[i], cumulative[i]);
        return findings;
    }

    private List<UnitFinding> Draw(Random random, WatchedUnit unit, double[] expected)
    {
        // Geometric bunches of mean m have variance over mean 2 m - 1 of the count.
        var another = (spread.Dispersion - 1) / (spread.Dispersion + 1);
        var mean = (expected.Length == 0 ? 0 : expected[^1]) * Gamma.Sample(random, spread.Shape, spread.Shape) * (1 - another);
        var findings = new List<UnitFinding>();
        for (var bunches = mean > 0 ? Poisson.Sample(random, mean) : 0; bunches > 0; bunches--)
        {
            var cell = Cell(expected, random.NextDouble() * expected[^1]);
            var (period, location) = (cell / panel.Locations, cell % panel.Locations);
            findings.Add(new UnitFinding(unit.FirstPeriod + period, location));
            while (another > 0 && random.NextDouble() < another)
            {
                var there = random.NextDouble() < spread.SameLocation ? location : InPeriod(expected, period, random.NextDouble());
                findings.Add(new UnitFinding(unit.FirstPeriod + period, there));
            }
        }

        findings.Sort((a, b) => a.Period != b.Period ? a.Period.CompareTo(b.Period) : a.Location.CompareTo(b.Location));
        return findings;
    }

    private int InPeriod(double[] expected, int period, double chance)
    {
        var low = period == 0 ? 0 : expected[period * panel.Locations - 1];
        var high = expected[(period + 1) * panel.Locations - 1];
        return Cell(expected, low + chance * (high - low)) % panel.Locations;
    }

    private static int Cell(double[] expected, double value)
    {
        var at = Array.BinarySearch(expected, value);
        at = at < 0 ? ~at : at + 1;
        // Where rounding leads past the end: the last cell that expects anything.
        while (at >= expected.Length || (at > 0 && expected[at] == expected[at - 1]))
            at--;
        return at;
    }

    private double[] Expected(WatchedUnit unit, double[] rates)
    {
        var cells = new double[(unit.LastPeriod - unit.FirstPeriod + 1) * panel.Locations];
        var (sum, index) = (0.0, 0);
        for (var p = unit.FirstPeriod; p <= unit.LastPeriod; p++)
        {
            var now = unit.Until(p);
            var before = unit.Until(p - 1);
            for (var l = 0; l < rates.Length; l++)
                cells[index++] = sum += rates[l] * (now[l] - before[l]);
        }

        return cells;
    }
}
