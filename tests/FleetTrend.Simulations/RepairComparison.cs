using System.Globalization;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Simulations;

/// <summary>Two kinds of repair compared where aircraft differ and have repairs of both kinds.</summary>
internal static class RepairComparison
{
    private const int Sets = 2000;
    private const double Level = 0.05;
    private const double Normal95 = 1.959964;
    private const int FewestBack = 3;
    private const double FewBy = 200;

    private static readonly double[] Marks = [100, 200, 400];

    private static readonly (string Name, int Aircraft, double FirstShare, RepairsOfAFleet Fleet)[] Fleets =
    [
        ("200 and 900 h", 30, 0.5, new(200, 900)),
        ("200 and 900 h", 30, 0.8, new(200, 900)),
        ("200 and 900 h", 10, 0.5, new(200, 900)),
        ("200 and 900 h", 5, 0.5, new(200, 900)),
        ("alike, 400 h", 30, 0.5, new(400, 400)),
        ("alike, 400 h", 30, 0.8, new(400, 400)),
        ("alike, 400 h", 10, 0.5, new(400, 400)),
        ("alike, 400 h", 5, 0.5, new(400, 400)),
        ("alike, 1,500 h, few come back", 10, 0.5, new(1500, 1500) { Places = 2 }),
        ("alike, 1,500 h, all on two aircraft", 2, 0.5, new(1500, 1500) { Places = 8 }),
    ];

    public static Section Section => new("Repairs compared: which comes back sooner", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("Cracks come back after weld repairs and after replacements: half of them by the stated hours, Weibull of shape 1.8; each aircraft is watched for 600");
        output.WriteLine("to 2,000 h at three places with looks every 70 to 130 h, and what is found is repaired again, one way or the other. Aircraft differ in hazard by a");
        output.WriteLine($"gamma distribution of the stated coefficient of variation. {Sets} fleets a row (error of a share of 5 %: 0.5 points). Ratio: how many times as");
        output.WriteLine("long one holds (`SharedUnitsContrast`); beside it the intervals of repairs taken as independent (standard error of `CommonShapeFit`) and of aircraft");
        output.WriteLine("taken as other ones for each set (`LifeContrast`). Called at 5 %: by the ratio; with under three come back after one of them, by Fisher's test of those");
        output.WriteLine("known at 200 h (`ClusteredShares`). \"Adjusted\": fleets with any call where three kinds of places are compared, after Holm. Share: those come back by 100,");
        output.WriteLine("200 and 400 h of all repairs made (`SharesFailed`), intervals that hold.");
        output.WriteLine();
        output.WriteLine("| half come back by | aircraft | variation | welds, back | replacements, back | ratio held | independent held | separate held | called | right sign | adjusted | weld shares held | replacement shares held |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (name, aircraft, share, fleet) in Fleets)
        {
            foreach (var variation in (double[])[0, 0.5])
                output.WriteLine(new Row(fleet with { FirstShare = share }, aircraft, variation).Write(name));
        }

        output.WriteLine();
        output.WriteLine("With five aircraft, and where few come back, limits are wide and hold more often than stated. Where aircraft differ, the share by 100 h of very many");
        output.WriteLine("repairs holds less often: the mixture of aircraft is no Weibull, which shows at that end first.");
    }

    private sealed class Row
    {
        private readonly int aircraft;
        private readonly double variation;
        private readonly double[] means = new double[4];
        private readonly int[] sharesHeld = new int[6];
        private readonly int[] sharesTold = new int[2];
        private readonly int adjusted;
        private int ratios, held, independent, separate, separates, called, right;

        public Row(RepairsOfAFleet fleet, int aircraft, double variation)
        {
            (this.aircraft, this.variation) = (aircraft, variation);
            var truth = fleet.FirstMedian / fleet.SecondMedian;
            var (first, second) = fleet.TrueShares(variation, Marks);
            var family = new List<double>();
            for (var set = 0; set < Sets; set++)
            {
                var units = fleet.Draw(new Random(set + 1), aircraft, variation);
                family.Add(Compare(units, truth));
                if (family.Count == 3)
                {
                    if (FamilyWise.Holm(family).Any(p => p < Level)) adjusted++;
                    family.Clear();
                }

                Hold([.. units.Select(u => u.First)], first, 0);
                Hold([.. units.Select(u => u.Second)], second, 1);
            }
        }

        public string Write(string name) => string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {aircraft} | {variation} | {means[0] / Sets:F0}, {means[1] / Sets:F0} | {means[2] / Sets:F0}, {means[3] / Sets:F0} | {Percent(held, ratios)} "
            + $"| {Percent(independent, ratios)} | {Percent(separate, separates)} | {Percent(called, Sets)} | {Percent(right, called)} | {Percent(adjusted, Sets / 3)} "
            + $"| {Shares(0)} | {Shares(1)} |");

        /// <summary>The p-value of a fleet; 1 where nothing can be compared.</summary>
        private double Compare(UnitLives[] units, double truth)
        {
            var (back, otherBack) = (units.Sum(u => u.First.Count(l => l.Failed)), units.Sum(u => u.Second.Count(l => l.Failed)));
            means[0] += units.Sum(u => u.First.Count);
            means[1] += back;
            means[2] += units.Sum(u => u.Second.Count);
            means[3] += otherBack;
            if (LifeContrast.Estimate(LifeDistribution.Weibull, [.. units.Select(u => u.First)], [.. units.Select(u => u.Second)]).TryGetValue(out var apart))
            {
                separates++;
                if (apart.MedianRatio.Interval.Contains(truth)) separate++;
            }

            var (p, isShorter) = (1.0, false);
            if (Math.Min(back, otherBack) >= FewestBack && SharedUnitsContrast.Estimate(LifeDistribution.Weibull, units).TryGetValue(out var contrast))
            {
                ratios++;
                if (contrast.Ratio.Interval.Contains(truth)) held++;
                if (Math.Abs(Math.Log(contrast.Ratio.Value / truth)) <= Normal95 * contrast.LogStandardError / Math.Sqrt(contrast.DesignEffect)) independent++;
                (p, isShorter) = (contrast.PValue, contrast.Ratio.Value < 1);
            }
            else if (ClusteredShares.Compare([.. units.Select(u => Known(u.First))], [.. units.Select(u => Known(u.Second))]).TryGetValue(out var few))
            {
                (p, isShorter) = (few.PValue, back > otherBack);
            }

            if (p < Level)
            {
                called++;
                if (isShorter) right++;
            }

            return p;
        }

        // Those still good count where they were watched so long. A life that failed was watched to the end of its aircraft, which a life does not tell: what
        // failed later than the mark was, too.
        private static ClusterCount Known(IReadOnlyList<Life> lives)
        {
            List<Life> watched = [.. lives.Where(l => l.Failed || l.Lower >= FewBy)];
            return new ClusterCount(watched.Count(l => l.Upper <= FewBy), watched.Count);
        }

        private void Hold(IReadOnlyList<Life>[] units, double[] truth, int side)
        {
            if (!SharesFailed.Estimate(LifeDistribution.Weibull, units, Marks).TryGetValue(out var shares)) return;
            sharesTold[side]++;
            for (var i = 0; i < Marks.Length; i++)
            {
                if (shares[i].Interval.Contains(truth[i])) sharesHeld[(side * Marks.Length) + i]++;
            }
        }

        private string Shares(int side) =>
            string.Join(", ", Marks.Select((_, i) => Percent(sharesHeld[(side * Marks.Length) + i], sharesTold[side])));

        private static string Percent(int count, int of) =>
            of == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:F1} %");
    }
}
