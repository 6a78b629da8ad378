using System.Globalization;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Simulations;

/// <summary>One cylinder or side beside the others of the same aircraft, on aircraft and places that differ.</summary>
internal static class PositionStudy
{
    private const int Fleets = 1200;
    private const int Kinds = 3;
    private const double Level = 0.05;
    private const double Variation = 0.5;

    private static readonly (int Aircraft, int Positions, double Mean, double Places)[] Settings =
    [
        (30, 4, 0.5, 0), (30, 4, 0.5, 0.7), (30, 4, 2, 1), (100, 6, 0.3, 0.7), (100, 4, 0.1, 0.5),
        (30, 2, 0.5, 0.7), (10, 4, 1, 0.7), (5, 4, 1, 0.5), (2, 4, 2, 0.5),
    ];

    public static Section Section => new("Cylinders and sides: one beside the others of the same aircraft", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("Each aircraft has a level (gamma, coefficient of variation 0.5), each place of it another (the stated variation): places that crack again and again on one");
        output.WriteLine($"aircraft are no worse cylinder. Events a place as stated, at the first position times the ratio. {Fleets} fleets a row (error of a share of 5 %: 0.6 points).");
        output.WriteLine("`PositionContrast`: interval of the ratio at the first position that holds; where the ratio is 1, any call at 5 % of any position at three kinds of location,");
        output.WriteLine("after Holm: all of them are false; else calls of the first position, after Holm over the same comparisons (two kinds without a difference), and those of other");
        output.WriteLine("kinds, which are false. Independent: the same test with every event taken by itself (binomial, by the total of each aircraft), as it would call falsely.");
        output.WriteLine();
        output.WriteLine("| aircraft | positions | events a place | places differ | ratio | events | held | below | above | first called | false calls | independent, false |");
        output.WriteLine("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (aircraft, positions, mean, places) in Settings)
        {
            foreach (var ratio in (double[])[1, 2, 3])
                output.WriteLine(Row(aircraft, positions, mean, places, ratio));
        }

        output.WriteLine();
        output.WriteLine("Outside 93 to 97 %: with few events limits are wide and hold more often than stated, as exact ones do; no better one is known there.");
    }

    private static string Row(int aircraft, int positions, double mean, double places, double ratio)
    {
        var random = new Random((10_000 * aircraft) + (100 * positions) + (int)(1000 * (mean + places)) + (int)ratio);
        var (events, told, held, below, above, called, wrong, independent) = (0L, 0, 0, 0, 0, 0, 0, 0);
        for (var fleet = 0; fleet < Fleets; fleet++)
        {
            List<double?> family = [];
            List<double> single = [];
            for (var kind = 0; kind < Kinds; kind++)
            {
                List<PositionUnit> units = [.. Enumerable.Range(0, aircraft).Select(_ => Unit(random, positions, mean, places, kind == 0 ? ratio : 1))];
                var contrasts = PositionContrast.Estimate(units);
                family.AddRange(Enumerable.Range(0, positions == 2 ? 1 : positions)
                    .Select(p => contrasts[p] is { } c && c.SmallestPValue <= Level ? c.PValue : (double?)null));
                single.AddRange(Enumerable.Range(0, positions == 2 ? 1 : positions).Select(p => ByEvents(units, p)));
                if (kind > 0 || contrasts[0] is not { } first) continue;
                events += units.Sum(u => u.Events.Sum());
                told++;
                if (first.Interval.Contains(ratio)) held++;
                else if (first.Interval.Upper < ratio) below++;
                else above++;
            }

            // What cannot be called is not tested, and takes nothing from the others.
            List<double> tested = [.. family.OfType<double>()];
            var adjusted = tested.Zip(FamilyWise.Holm(tested)).DistinctBy(p => p.First).ToDictionary(p => p.First, p => p.Second);
            if (IsCalled(family[0])) called++;
            if (family.Skip(ratio == 1 ? 0 : family.Count / Kinds).Any(IsCalled)) wrong++;
            if (FamilyWise.Holm(single).Skip(ratio == 1 ? 0 : single.Count / Kinds).Any(p => p < Level)) independent++;

            bool IsCalled(double? p) => p is { } tested && adjusted[tested] < Level;
        }

        return string.Create(CultureInfo.InvariantCulture,
            $"| {aircraft} | {positions} | {mean} | {places} | {ratio} | {(double)events / Fleets:F0} | {Percent(held, told)} | {Percent(below, told)} | {Percent(above, told)} ")
            + $"| {(ratio == 1 ? "" : Percent(called, Fleets))} | {Percent(wrong, Fleets)} | {Percent(independent, Fleets)} |";
    }

    private static PositionUnit Unit(Random random, int positions, double mean, double places, double ratio)
    {
        var level = Draws.Frailty(random, 1 / (Variation * Variation));
        return new PositionUnit(
            [.. Enumerable.Range(0, positions).Select(p => Draws.Count(
                random, mean * level * (p == 0 ? ratio : 1) * Draws.Frailty(random, places == 0 ? double.PositiveInfinity : 1 / (places * places))))],
            [.. Enumerable.Repeat(1.0, positions)]);
    }

    private static double ByEvents(List<PositionUnit> units, int position)
    {
        var (here, all) = (units.Sum(u => u.Events[position]), units.Sum(u => u.Events.Sum()));
        if (all == 0) return 1;
        var law = new MathNet.Numerics.Distributions.Binomial(1.0 / units[0].Events.Count, all);
        return Math.Min(1, 2 * Math.Min(law.CumulativeDistribution(here), 1 - law.CumulativeDistribution(here - 1)));
    }

    private static string Percent(int count, int of) => of == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:F1} %");
}
