using System.Globalization;
using FleetTrend.Trends;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Simulations;

/// <summary>Whether the stock for a service level covers what a fleet then needs as often as stated.</summary>
internal static class SpareStudy
{
    private const int Fleets = 200;
    private const int Repeats = 2;

    public static Section Section => new("Spares: is the service level met", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("Four gaskets on each aircraft (Weibull, shape 2.2, scale 900 h), looks every 90 to 110 h, replaced when found failed. Aircraft fly 1.2 to 2.4 h a day,");
        output.WriteLine("from quarter to quarter more or less (standard deviation of the logarithm 0.15), times a season that is the same each year; the day on which spares");
        output.WriteLine("are foreseen falls anywhere in it. Three years are known, the stock for 95 % is foreseen by `SpareAnalysis`, and the half year after is drawn.");
        output.WriteLine($"{Fleets * Repeats} fleets a row, twice {Fleets} (error of a share of 95 %: 1.1 points). \"Stated\": the chance that the stock of whole parts covers the need, as the");
        output.WriteLine("forecast has it, above 95 % since parts are whole. \"Worst\": the lower of the two. \"Range held\": the 95 % range had the number in it.");
        output.WriteLine();
        output.WriteLine("| fleet | days | foreseen, mean | needed, mean | stated | met | worst | range held |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        (string Name, SpareFleet Fleet)[] rows =
        [
            ("30 aircraft, no season", new SpareFleet { Aircraft = 30 }),
            ("30 aircraft, season of 40 % either way", new SpareFleet { Aircraft = 30, Season = 0.4 }),
            ("10 aircraft, season of 40 % either way", new SpareFleet { Aircraft = 10, Season = 0.4 }),
            ("5 aircraft, season of 40 % either way", new SpareFleet { Aircraft = 5, Season = 0.4 }),
            ("30 aircraft, season, sisters go out in a third", new SpareFleet { Aircraft = 30, Season = 0.4, Sisters = 1.0 / 3 }),
            ("30 aircraft that differ (coefficient of variation of the hazard 0.3), season", new SpareFleet { Aircraft = 30, Season = 0.4, Variation = 0.3 }),
        ];
        foreach (var (name, fleet) in rows)
        {
            foreach (var line in Rows(name, fleet))
                output.WriteLine(line);
        }
    }

    private static IEnumerable<string> Rows(string name, SpareFleet fleet)
    {
        var parameters = new TrendParameters();
        var outcomes = new Outcome[Fleets * Repeats][];
        Parallel.For(0, outcomes.Length, i =>
        {
            var (known, needed) = fleet.Draw(new Random(unchecked(20261127 + 7919 * i)));
            var asOf = new DateTimeOffset(SpareFleet.Today, TimeOnly.MinValue, TimeSpan.Zero);
            var need = Analyses.Spares.Compute(new TypeGroupInputs("four", known, asOf, parameters)).Subjects.Cast<SubjectResult<SpareNeed>>().Single()
                .Items.Single();
            outcomes[i] = [.. need.Horizons.Select(h => Outcome.Of(need, h, needed.Take(h.Days + 1).Sum()))];
        });
        for (var h = 0; h < parameters.SpareHorizonsDays.Count; h++)
        {
            var told = outcomes.Select(o => o.Length > 0 ? o[h] : null).ToList();
            var some = told.OfType<Outcome>().ToList();
            var worst = told.Chunk(Fleets).Min(c => c.OfType<Outcome>().Average(o => o.IsMet ? 1.0 : 0));
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {parameters.SpareHorizonsDays[h]} | {some.Average(o => o.Mean):F2} | {some.Average(o => o.Needed):F2} | {100 * some.Average(o => o.Stated):F1} % | {100 * some.Average(o => o.IsMet ? 1.0 : 0):F1} % | {100 * worst:F1} % | {100 * some.Average(o => o.IsHeld ? 1.0 : 0):F1} % |");
        }
    }

    private sealed record Outcome(double Mean, int Needed, double Stated, bool IsMet, bool IsHeld)
    {
        public static Outcome Of(SpareNeed need, SpareHorizon horizon, int needed)
        {
            var (stock, interval) = (horizon.Forecast.Stock(need.ServiceLevel), need.IntervalOf(horizon));
            return new Outcome(horizon.Mean, needed, stock.Covered, needed <= stock.Stock, interval.Lower <= needed && needed <= interval.Upper);
        }
    }
}
