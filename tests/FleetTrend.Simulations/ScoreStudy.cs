using System.Globalization;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Simulations;

/// <summary>How often the score calls forecasts off that are right, and how soon it does where lives are suddenly halved.</summary>
internal static class ScoreStudy
{
    private const int Operators = 120;
    private const int HalvedQuarter = 6;

    public static Section Section => new("How right were we: is the verdict right", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("An operator with four gaskets on each aircraft (Weibull, shape 2.2, scale 900 h) at two bases, looks every 90 to 110 h, replaced when found failed; aircraft fly");
        output.WriteLine("1.2 to 2.4 h a day, from quarter to quarter more or less (standard deviation of the logarithm 0.15). Two years are known before the first forecast is kept, then");
        output.WriteLine($"one a quarter for three years, and each quarter is judged with the one before (`ScoreAnalysis`). {Operators} operators a row. \"Fit\": quarters of operators whose");
        output.WriteLine("count of failures found was within the 95 % limits of the chances. \"Held\": ranges of spares for 90 days, stated as 95 %. \"Ever off\": operators that were told");
        output.WriteLine("within the three years, by 11 or 12 verdicts, that their chances (their spares) were off; stated is 2.5 % of each at most. \"In time\": where every hour flown ages a");
        output.WriteLine("part by two from the first day of the seventh quarter on, operators that were told so by the end of the eighth.");
        output.WriteLine();
        output.WriteLine("| fleet | found in two quarters, mean | fit | chances ever off | in time | held | spares ever off | in time |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (name, aircraft, variation) in new[]
                 {
                     ("30 aircraft", 30, 0), ("30 aircraft that differ (coefficient of variation of the hazard 0.3)", 30, 0.3), ("10 aircraft", 10, 0), ("3 aircraft", 3, 0),
                 })
        {
            output.WriteLine(Row(name, aircraft, variation));
        }
    }

    private static string Row(string name, int aircraft, double variation)
    {
        var planted = ScoredYears.First;
        for (var i = 0; i < HalvedQuarter; i++)
            planted = planted.Next;
        var right = Draw(aircraft, variation, halvedFrom: null, ScoredYears.First, ScoredYears.Until);
        var halved = Draw(aircraft, variation, planted.StartDate.DayNumber - SimulatedOperator.Start.DayNumber, planted.Previous, planted.Next.Next);
        var chances = right.SelectMany(o => o).Select(s => s.Chances).OfType<ChanceScore>().ToList();
        var spares = right.SelectMany(o => o).Select(s => s.Spares?.Judged).OfType<SpareHorizonScore>().ToList();
        string[] cells =
        [
            name,
            string.Create(CultureInfo.InvariantCulture, $"{right.SelectMany(o => o).Select(s => s.ChancesOfTwo).OfType<ChanceScore>().Average(s => s.Found):F1}"),
            Percent(chances.Count(s => !s.IsOutside), chances.Count),
            Percent(right.Count(o => o.Any(s => s.ChancesOfTwo?.IsOff == true)), Operators),
            Percent(halved.Count(o => o.Any(s => s.Quarter.StartDate >= planted.StartDate && s.ChancesOfTwo?.IsOff == true)), Operators),
            Percent(spares.Sum(s => s.Held), spares.Sum(s => s.Forecasts)),
            Percent(right.Count(o => o.Any(s => s.SparesOfTwo?.IsOff == true)), Operators),
            Percent(halved.Count(o => o.Any(s => s.Quarter.StartDate >= planted.StartDate && s.SparesOfTwo?.IsOff == true)), Operators),
        ];
        return $"| {string.Join(" | ", cells)} |";
    }

    private static IReadOnlyList<Score>[] Draw(int aircraft, double variation, int? halvedFrom, Quarter first, Quarter until)
    {
        var operators = new IReadOnlyList<Score>[Operators];
        Parallel.For(0, Operators, i =>
        {
            var random = new Random(unchecked(20261128 + 7919 * i));
            operators[i] = ScoredYears.Run(new SimulatedOperator(random, aircraft, ScoredYears.Days, variation, halvedFrom), first, until);
        });
        return operators;
    }

    private static string Percent(int count, int of) => of == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:F1} %");
}
