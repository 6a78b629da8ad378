namespace FleetTrend.Statistics.Norms;

/// <summary>
/// What a position would have over its expected share, were its name drawn anew on each unit: the exact law, units added by convolution. Equal exposures
/// count in whole events; others on a fine grid.
/// </summary>
internal sealed class PositionLaw
{
    private const double FinestStep = 1 / 1024.0;
    private const int MostCells = 2048;
    private const double Negligible = 1e-30;

    private readonly double step;
    private readonly int first;
    private readonly double[] chances;
    private readonly double smallest;

    private PositionLaw(double step, int first, double[] chances, double smallest) =>
        (this.step, this.first, this.chances, this.smallest) = (step, first, chances, smallest);

    /// <summary>The law of units of which each had an event.</summary>
    public static PositionLaw Of(IReadOnlyList<PositionUnit> units)
    {
        var cell = units.All(IsEven) ? 1 : Math.Max(FinestStep, units.Sum(u => u.Times * Over(u).Max(o => o.Over)) / MostCells);
        double[] law = [1];
        var (first, low, high) = (0, 0.0, 0.0);
        foreach (var unit in units)
        {
            List<(int Cell, double Chance)> each = [.. Over(unit).GroupBy(o => Cell(o.Over, cell)).OrderBy(g => g.Key)
                .Select(g => (g.Key, g.Count() / (double)Watched(unit)))];
            low += unit.Times * Math.Log(each[0].Chance);
            high += unit.Times * Math.Log(each[^1].Chance);
            for (var i = 0; i < unit.Times; i++)
                (law, first) = Trim(Add(law, each), first);
        }

        return new PositionLaw(cell, first, law, Math.Min(1, 2 * Math.Exp(Math.Min(low, high))));
    }

    /// <summary>Twice the smaller tail at what the position had, and the smallest that it could be.</summary>
    public (double PValue, double SmallestPValue) Test(IReadOnlyList<PositionUnit> units, int position)
    {
        var at = units.Sum(u => u.Times * Cell(Over(u).First(o => o.Position == position).Over, step)) - first;
        var (upper, lower) = (0.0, 0.0);
        for (var i = 0; i < chances.Length; i++)
        {
            if (i >= at) upper += chances[i];
            if (i <= at) lower += chances[i];
        }

        return (Math.Clamp(2 * Math.Min(upper, lower), smallest, 1), smallest);
    }

    /// <summary>Events over the expected share at each watched position, from the lowest on; of even exposures the events themselves.</summary>
    private static IEnumerable<(int Position, double Over)> Over(PositionUnit unit)
    {
        if (IsEven(unit))
            return unit.Events.Select((e, i) => (i, (double)(e - unit.Events.Min())));
        var (events, exposure) = (0, 0.0);
        for (var i = 0; i < unit.Events.Count; i++)
        {
            if (unit.Exposures[i] > 0)
                (events, exposure) = (events + unit.Events[i], exposure + unit.Exposures[i]);
        }

        List<(int Position, double Over)> over = [.. Enumerable.Range(0, unit.Events.Count).Where(i => unit.Exposures[i] > 0)
            .Select(i => (i, unit.Events[i] - (events * unit.Exposures[i] / exposure)))];
        var lowest = over.Min(o => o.Over);
        return over.Select(o => (o.Position, o.Over - lowest));
    }

    private static bool IsEven(PositionUnit unit) => unit.Exposures.All(e => e == unit.Exposures[0]);

    private static int Watched(PositionUnit unit) => unit.Exposures.Count(e => e > 0);

    private static int Cell(double over, double step) => (int)Math.Round(over / step);

    private static double[] Add(double[] law, List<(int Cell, double Chance)> each)
    {
        var sum = new double[law.Length + each[^1].Cell];
        foreach (var (cell, chance) in each)
        {
            for (var i = 0; i < law.Length; i++)
                sum[i + cell] += law[i] * chance;
        }

        return sum;
    }

    /// <summary>Leaves out ends that no p-value shows.</summary>
    private static (double[] Law, int First) Trim(double[] law, int first)
    {
        var (low, high) = (0, law.Length - 1);
        while (law[low] < Negligible) low++;
        while (law[high] < Negligible) high--;
        return low == 0 && high == law.Length - 1 ? (law, first) : (law[low..(high + 1)], first + low);
    }
}
