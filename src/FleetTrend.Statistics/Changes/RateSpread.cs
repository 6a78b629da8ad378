using FleetTrend.Statistics.Norms;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Changes;

/// <summary>How ordinary units differ and how their findings come.</summary>
/// <param name="Shape">Shape of the gamma distribution of units' levels: its coefficient of variation is one over the square root.</param>
/// <param name="Dispersion">Variance over mean of the findings of a look, given the unit's level: one where they come singly, more in bunches.</param>
/// <param name="SameLocation">Of two findings of one bunch, the chance that both are at one location.</param>
public sealed record RateSpread(double Shape, double Dispersion = 1, double SameLocation = 0)
{
    private const double LargestShape = 100;
    private const double SmallestShape = 0.8;

    // Units that are averages of many members differ less: a coefficient of variation of one half at most.
    private const double SmallestShapeOfGroups = 4;
    private const double UnknownShape = 4;

    /// <summary>Estimates both from a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="members">
    /// For units that have members (aircraft of a base), the spread of the members: bunches are theirs, and the looks of many members at once would
    /// show any change as a bunch. Null where the panel tells of bunches itself.
    /// </param>
    /// <returns>The spread; with few findings it leans on <see cref="RatePrior.Weak"/>, a coefficient of variation near one half.</returns>
    /// <remarks>
    /// Source: half-Cauchy prior, Gelman 2006, Bayesian Analysis 1. Dispersion: given a unit's total, single findings fall on looks as a
    /// multinomial, so that sum of n (n - 1) over looks has mean N (N - 1) sum of share². Bunches of excess d = variance over mean less one
    /// add N d (1 - sum of share²). Derived here from the variance of a compound Poisson count.
    /// </remarks>
    public static RateSpread Estimate(WatchedPanel panel, RateSpread? members = null)
    {
        var (dispersion, sameLocation) = members is null ? Bunches(panel) : (members.Dispersion, members.SameLocation);
        return new RateSpread(ShapeOf(Expectations(panel), dispersion, members is null ? SmallestShape : SmallestShapeOfGroups), dispersion, sameLocation);
    }

    /// <summary>Shape with the posterior mean of the coefficient of variation; counts of bunches are divided by their dispersion.</summary>
    private static double ShapeOf(IReadOnlyList<(int Found, double Expected)> units, double dispersion, double smallest)
    {
        const int steps = 24;
        var (found, expected) = (units.Sum(u => (double)u.Found), units.Sum(u => u.Expected));
        if (found == 0 || units.Count(u => u.Expected > 0) < 2)
            return Math.Max(UnknownShape, smallest);
        var counts = units.Where(u => u.Expected > 0).Select(u => (u.Found / dispersion, u.Expected * found / expected / dispersion)).ToList();
        var points = Enumerable.Range(0, steps + 1).Select(i => smallest * Math.Pow(LargestShape / smallest, i / (double)steps))
            .Select(shape => (Shape: shape, Log: LogLikelihood(counts, shape) + RatePrior.Weak.OnLogs(1, shape))).ToList();
        var top = points.Max(p => p.Log);
        var weight = points.Sum(p => Math.Exp(p.Log - top));
        var variation = points.Sum(p => Math.Exp(p.Log - top) / Math.Sqrt(p.Shape)) / weight;
        return 1 / (variation * variation);
    }

    // Not GammaPoissonLikelihood: counts over their dispersion are no whole numbers, and rounding them hides the spread.
    private static double LogLikelihood(List<(double Found, double Expected)> units, double shape)
    {
        var sum = -units.Count * SpecialFunctions.GammaLn(shape);
        foreach (var (found, expected) in units)
        {
            sum += SpecialFunctions.GammaLn(shape + found) + shape * Math.Log(shape / (shape + expected))
                + found * Math.Log(expected / (shape + expected));
        }

        return sum;
    }

    /// <summary>Found and expected of each unit over the whole time, at the rates of the others.</summary>
    /// <param name="panel">The panel.</param>
    /// <returns>One pair per unit, in order; nothing expected where the others were not watched.</returns>
    public static IReadOnlyList<(int Found, double Expected)> Expectations(WatchedPanel panel)
    {
        var counts = new PanelCounts(panel, [.. panel.Units.Select(u => u.Findings)]);
        var rates = new double[panel.Locations];
        var found = new int[panel.Locations];
        var expectations = new List<(int, double)>(panel.Units.Count);
        foreach (var unit in panel.Units)
        {
            Array.Clear(found);
            foreach (var finding in unit.Findings)
                found[finding.Location]++;
            var own = unit.Until(panel.Periods - 1);
            var expected = 0.0;
            if (counts.TryRates(panel.Periods - 1, own, found, rates))
            {
                for (var l = 0; l < rates.Length; l++)
                    expected += rates[l] * own[l];
            }

            expectations.Add((expected > 0 ? unit.Findings.Count : 0, expected));
        }

        return expectations;
    }

    private static (double Dispersion, double SameLocation) Bunches(WatchedPanel panel)
    {
        var (pairs, pairsAtOnePlace, byChance, free) = (0.0, 0.0, 0.0, 0.0);
        foreach (var unit in panel.Units.Where(u => u.Findings.Count > 0))
        {
            foreach (var look in unit.Findings.GroupBy(f => f.Period))
            {
                double n = look.Count();
                pairs += n * (n - 1);
                pairsAtOnePlace += look.GroupBy(f => f.Location).Sum(g => (double)g.Count() * (g.Count() - 1));
            }

            var squares = SumOfSquaredShares(unit);
            byChance += (double)unit.Findings.Count * (unit.Findings.Count - 1) * squares;
            free += unit.Findings.Count * (1 - squares);
        }

        if (!(free > 0))
            return (1, 0);
        var excess = (pairs - byChance) / free;
        // Chance alone moves the excess by about this much; less than that is no sign of bunches.
        var noise = Math.Sqrt(2 * Math.Max(byChance, 1)) / free;
        if (excess <= noise)
            return (1, 0);
        var inBunches = excess * panel.Units.Sum(u => (double)u.Findings.Count);
        var atOnePlaceByChance = (pairs - inBunches) * SumOfSquaredLocationShares(panel);
        return (1 + excess, Math.Clamp((pairsAtOnePlace - atOnePlaceByChance) / inBunches, 0, 1));
    }

    private static double SumOfSquaredLocationShares(WatchedPanel panel)
    {
        var counts = panel.Units.SelectMany(u => u.Findings).GroupBy(f => f.Location).Select(g => (double)g.Count()).ToList();
        return counts.Sum(n => n * n) / Math.Pow(counts.Sum(), 2);
    }

    private static double SumOfSquaredShares(WatchedUnit unit)
    {
        var whole = Sum(unit.Until(unit.LastPeriod));
        var (sum, before) = (0.0, 0.0);
        for (var p = unit.FirstPeriod; p <= unit.LastPeriod; p++)
        {
            var now = Sum(unit.Until(p));
            sum += (now - before) / whole * ((now - before) / whole);
            before = now;
        }

        return whole > 0 ? sum : 1;
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return sum;
    }
}
