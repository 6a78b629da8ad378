using System.Globalization;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Simulations;

/// <summary>Coverage of the rate of a kind where aircraft differ, beside the exact limits of a single Poisson count.</summary>
internal static class ClusteredRateCoverage
{
    private const int Runs = 40_000;

    private static readonly (int Aircraft, double Mean, double Variation, double Bunched)[] Others =
    [
        (10, 2, 0.5, 0.5), (30, 2, 0.5, 0.5), (30, 2, 1, 0), (100, 2, 0.5, 0), (30, 0.1, 0.5, 0), (5, 2, 0.5, 0), (3, 2, 0.5, 0), (2, 2, 0.5, 0),
    ];

    public static Section Section => new("Rate of a kind over aircraft that differ", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("Aircraft of 200 to 1,500 h each; their rates differ by a gamma distribution of the stated coefficient of variation. In bunches: each event");
        output.WriteLine($"brings one more in half of the cases. {Runs} fleets a row (error of a share of 95 %: 0.1 points). Before: exact limits of one Poisson count");
        output.WriteLine("(Garwood). Now: `ClusteredRate`, at 95 % and at 80 %; dispersion is the mean of what it prints. Fleets without an event have the exact");
        output.WriteLine("upper limit in both.");
        output.WriteLine();
        output.WriteLine("| aircraft | events per aircraft | variation | in bunches | before | at 95 % | below | above | at 80 % | dispersion |");
        output.WriteLine("| ---: | ---: | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var aircraft in (int[])[10, 30])
        {
            foreach (var mean in (double[])[0.5, 2, 9])
            {
                foreach (var variation in (double[])[0, 0.5])
                    output.WriteLine(Row(aircraft, mean, variation, bunched: 0));
            }
        }

        foreach (var (aircraft, mean, variation, bunched) in Others)
            output.WriteLine(Row(aircraft, mean, variation, bunched));

        output.WriteLine();
        output.WriteLine("With under five aircraft a coefficient of variation of one half is assumed, so that the limits hold more often than stated where they differ less.");
    }

    private static string Row(int aircraft, double mean, double variation, double bunched)
    {
        var random = new Random((int)(1000 * mean) + (7 * aircraft) + (int)(100_000 * variation) + (int)(1_000_000 * bunched));
        var (before, held, below, above, at80, spread, spreads) = (0, 0, 0, 0, 0, 0.0, 0);
        for (var run = 0; run < Runs; run++)
        {
            CountExposure[] units = [.. Enumerable.Range(0, aircraft).Select(_ => Unit(random, mean, variation, bunched))];
            var rate = ClusteredRate.Estimate(units).Value;
            if (rate.Interval.Contains(mean)) held++;
            else if (rate.Interval.Upper < mean) below++;
            else above++;
            if (ClusteredRate.Estimate(units, 0.8).Value.Interval.Contains(mean)) at80++;
            if (RateEstimate.Estimate((int)rate.Events, rate.Exposure).Value.Interval.Contains(mean)) before++;
            if (rate.Dispersion is not { } dispersion)
                continue;
            spread += dispersion;
            spreads++;
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {aircraft} | {mean} | {variation} | {(bunched > 0 ? "yes" : "no")} | {Percent(before)} | {Percent(held)} | {Percent(below)} | {Percent(above)} | {Percent(at80)} | {spread / spreads:F2} |");
    }

    /// <summary>Exposure is in units of the mean hours, so that the true rate is the mean.</summary>
    private static CountExposure Unit(Random random, double mean, double variation, double bunched)
    {
        var exposure = Draws.Between(random, 200, 1500) / 850;
        var level = Draws.Frailty(random, variation > 0 ? 1 / (variation * variation) : double.PositiveInfinity);
        var first = Draws.Count(random, mean * exposure * level / (1 + bunched));
        return new CountExposure(first + Enumerable.Range(0, first).Count(_ => random.NextDouble() < bunched), exposure);
    }

    private static string Percent(int count) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / Runs:F1} %");
}
