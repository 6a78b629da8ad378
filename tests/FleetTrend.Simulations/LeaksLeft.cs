using System.Globalization;
using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Simulations;

/// <summary>Leaks that are left erode their port faces: share by hours, and chance until the next look, on aircraft that may differ.</summary>
internal static class LeaksLeft
{
    private const int Sets = 2000;
    private const double Median = 250;
    private const double Shape = 2;
    private const int FewestCases = 3;

    private static readonly (double Age, double Ahead)[] Spans = [(0, 100), (0, 200), (50, 100), (100, 100)];

    public static Section Section => new("Leaks left: port faces eroded by the next look", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("One to four leaks an aircraft, each left for 50 to 350 h with looks every 40 to 110 h; half of the faces are eroded 250 h after the first trace (Weibull,");
        output.WriteLine($"shape 2), on aircraft whose hazards differ by a gamma distribution of the stated coefficient of variation. {Sets} fleets a row; a chance is told from");
        output.WriteLine($"{FewestCases} cases on. `SharesFailed`: share eroded by 100 and 200 h, and the chance of a face good at 50 or at 100 h to be eroded 100 h later; limits that hold");
        output.WriteLine("what is true of all leaks left.");
        output.WriteLine();
        output.WriteLine("| aircraft | variation | cases (mean) | told | by 100 h | by 200 h | good at 50 h, by 150 h | good at 100 h, by 200 h |");
        output.WriteLine("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var aircraft in (int[])[5, 10, 30, 100])
        {
            foreach (var variation in (double[])[0, 0.5])
                output.WriteLine(Row(aircraft, variation));
        }

        output.WriteLine();
        output.WriteLine("With few aircraft the limits are those of units that may differ more than they do, and hold more often than stated.");
    }

    private static string Row(int aircraft, double variation)
    {
        var truth = Truth(variation);
        var (told, cases, held) = (0, 0L, new int[Spans.Length]);
        for (var set = 0; set < Sets; set++)
        {
            var random = new Random((100_000 * aircraft) + set);
            IReadOnlyList<IReadOnlyList<Life>> units = [.. Enumerable.Range(0, aircraft).Select(_ => OfAircraft(random, variation, _ => { }))];
            var found = units.Sum(u => u.Count(l => l.Failed));
            cases += found;
            if (found < FewestCases || !SharesFailed.EstimateAhead(LifeDistribution.Weibull, units, Spans).TryGetValue(out var shares)) continue;
            told++;
            for (var i = 0; i < Spans.Length; i++)
            {
                if (shares[i].Interval.Contains(truth[i])) held[i]++;
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"| {aircraft} | {variation} | {(double)cases / Sets:F1} | {Percent(told, Sets)} | ")
            + string.Join(" | ", held.Select(h => Percent(h, told))) + " |";
    }

    /// <summary>By a fleet so large that it shows no error.</summary>
    private static double[] Truth(double variation)
    {
        var random = new Random(1);
        var ages = new List<double>();
        for (var i = 0; i < 200_000; i++) OfAircraft(random, variation, ages.Add);
        return Array.ConvertAll(Spans, s => ages.Count(a => a > s.Age && a <= s.Age + s.Ahead) / (double)ages.Count(a => a > s.Age));
    }

    private static List<Life> OfAircraft(Random random, double variation, Action<double> tell)
    {
        var longer = Math.Pow(Draws.Frailty(random, variation == 0 ? double.PositiveInfinity : 1 / (variation * variation)) * Math.Log(2), -1 / Shape);
        var lives = new List<Life>();
        for (var leaks = random.Next(1, 5); leaks > 0; leaks--)
        {
            var age = Median * longer * Math.Pow(Exponential.Sample(random, 1), 1 / Shape);
            tell(age);
            var end = Draws.Between(random, 50, 350);
            var (good, look) = (0.0, Draws.Between(random, 40, 110));
            while (look < age && look < end) (good, look) = (look, look + Draws.Between(random, 40, 110));
            if (look >= age && look < end + 110) lives.Add(Life.FailedBetween(Math.Round(good, 1), Math.Round(look, 1)));
            else lives.Add(Life.GoodAt(Math.Round(look, 1)));
        }

        return lives;
    }

    private static string Percent(int count, int of) =>
        of == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:F1} %");
}
