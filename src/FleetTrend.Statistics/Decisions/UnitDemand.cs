using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Decisions;

/// <summary>Failures found on aircraft by each horizon, where the life is known: over what an aircraft may fly, then over its parts, then over
/// aircraft.</summary>
internal static class UnitDemand
{
    /// <summary>Five nodes and weights of Gauss and Hermite for a standard normal. Source: Abramowitz and Stegun 1972, table 25.10.</summary>
    private static readonly (double Z, double Weight)[] Nodes =
    [
        (0, 8.0 / 15), (-1.355626179974266, 0.2220759220056126), (1.355626179974266, 0.2220759220056126),
        (-2.856970013872806, 0.01125741132772069), (2.856970013872806, 0.01125741132772069),
    ];

    public static double[][] Sum(IReadOnlyList<UnitInUse> units, LifeModel life, double goesOutGood, int horizons)
    {
        var rhythms = new Dictionary<double, RenewalCount>();
        var sums = new DemandChances[horizons];
        for (var h = 0; h < horizons; h++)
            (sums[h] = new DemandChances()).SetZero();
        var scratch = new DemandChances();
        foreach (var unit in units)
        {
            var parts = new List<PartCounts>(unit.Parts.Count);
            for (var p = 0; p < unit.Parts.Count; p++) // sisters that went in together are alike
                parts.Add(p > 0 && unit.Parts[p] == unit.Parts[p - 1] ? parts[p - 1] : PartCounts.Compute(unit.Parts[p], unit, Rhythm));
            for (var h = 0; h < horizons; h++)
                Add(parts, h, sums[h], scratch);
        }

        return Array.ConvertAll(sums, s => s.ToArray());

        RenewalCount Rhythm(double lookHours)
        {
            if (!rhythms.TryGetValue(lookHours, out var rhythm))
                rhythms.Add(lookHours, rhythm = new RenewalCount(life, lookHours, goesOutGood));
            return rhythm;
        }
    }

    private static void Add(List<PartCounts> parts, int horizon, DemandChances sum, DemandChances scratch)
    {
        // Where what it may fly makes no look more or fewer, one node says what all say.
        if (parts.TrueForAll(p => p.IsSure(horizon)))
        {
            foreach (var part in parts)
                sum.Convolve(part.At(horizon, 0));
            return;
        }

        var mixed = new DemandChances();
        for (var node = 0; node < Nodes.Length; node++)
        {
            scratch.SetZero();
            foreach (var part in parts)
                scratch.Convolve(part.At(horizon, node));
            mixed.AddWeighted(scratch.AsSpan(), Nodes[node].Weight);
        }

        sum.Convolve(mixed.AsSpan());
    }

    /// <summary>Chances of one part by the number of looks at each horizon and node.</summary>
    private sealed class PartCounts(int[] places, double[][] chances)
    {
        public static PartCounts Compute(PartInUse part, UnitInUse unit, Func<double, RenewalCount> rhythmOf)
        {
            var places = new int[unit.HoursAhead.Count * Nodes.Length];
            var distinct = new List<int>();
            for (var i = 0; i < places.Length; i++)
            {
                var hours = unit.HoursAhead[i / Nodes.Length];
                var looks = part.LooksWithin(Math.Max(0, hours.Mean + Nodes[i % Nodes.Length].Z * hours.Spread));
                if ((places[i] = distinct.IndexOf(looks)) < 0)
                {
                    places[i] = distinct.Count;
                    distinct.Add(looks);
                }
            }

            return new PartCounts(places, rhythmOf(part.LookHours).Compute(part, distinct));
        }

        public double[] At(int horizon, int node) => chances[places[horizon * Nodes.Length + node]];

        public bool IsSure(int horizon) => places.AsSpan(horizon * Nodes.Length, Nodes.Length).IndexOfAnyExcept(places[horizon * Nodes.Length]) < 0;
    }
}
