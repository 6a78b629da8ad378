using System.Globalization;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Simulations;

/// <summary>
/// Coverage of what a report prints of an aircraft beside the others: observed over expected with the norm of the others, and the events
/// expected in its hours at the others' rates.
/// </summary>
internal static class StratifiedCoverage
{
    private const int Runs = 4000;
    private const int Locations = 12;

    public static Section Section => new("One aircraft against the others, over locations", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine($"{Locations} locations whose rates differ by up to a factor of ten, one rate per location for all aircraft but the first, which has the stated");
        output.WriteLine($"ratio at every location; 200 to 1,500 h each. {Runs} sets a row (error of a share about 0.3 points). Intervals at 95 %; the norm is that of");
        output.WriteLine("the others alone. Expected: events in the aircraft's hours at the others' true rates.");
        output.WriteLine();
        output.WriteLine("| aircraft | events per aircraft | true ratio | ratio: coverage | below | none | expected events: coverage | below |");
        output.WriteLine("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (aircraft, mean) in new[] { (6, 1.0), (6, 6.0), (20, 1.0), (20, 6.0) })
        {
            foreach (var ratio in (double[])[1, 3]) output.WriteLine(Row(aircraft, mean, ratio));
        }

        output.WriteLine();
        output.WriteLine("Counts come in steps, so that with few events both intervals hold more often than stated.");
    }

    private static string Row(int aircraft, double mean, double ratio)
    {
        var random = new Random(HashCode(aircraft, mean, ratio));
        var (estimated, held, below, none, expectedHeld, expectedBelow) = (0, 0, 0, 0, 0, 0);
        for (var run = 0; run < Runs; run++)
        {
            var rates = Enumerable.Range(0, Locations).Select(_ => Math.Pow(10, random.NextDouble())).ToArray();
            var factor = mean / (850 * rates.Sum());
            var hours = Enumerable.Range(0, aircraft).Select(_ => Draws.Between(random, 200, 1500)).ToArray();
            NormStratum[] strata = [.. rates.Select((rate, l) => new NormStratum($"{l}", [.. hours.Select((h, a) =>
                new UnitCount($"{a}", Draws.Count(random, (a == 0 ? ratio : 1) * factor * rate * h), h))]))];
            var standing = LeaveOneOutTest.Test(strata).Standings.Single(s => string.Equals(s.Unit, "0", StringComparison.Ordinal));
            if (StandardisedRatio.Estimate(standing).TryGetValue(out var estimate))
            {
                estimated++;
                if (estimate.Interval.Contains(ratio)) held++;
                else if (estimate.Interval.Upper < ratio) below++;
            }
            else
            {
                none++;
            }

            var truth = factor * rates.Sum() * hours[0];
            var expected = WeightedPoissonInterval.Estimate(
                [.. standing.Contributions.Select(c => new WeightedCount(c.OthersEvents, c.ExposureHours / c.OthersExposureHours))]);
            if (expected.Contains(truth)) expectedHeld++;
            else if (expected.Upper < truth) expectedBelow++;
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {aircraft} | {mean} | {ratio} | {100.0 * held / estimated:F1} % | {100.0 * below / estimated:F1} % | {none} | {100.0 * expectedHeld / Runs:F1} % | {100.0 * expectedBelow / Runs:F1} % |");
    }

    private static int HashCode(int aircraft, double mean, double ratio) => (aircraft * 1000) + (int)(mean * 10) + (int)ratio;
}
