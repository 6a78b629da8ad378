using System.Text.Json;
using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Monitoring;
using FleetTrend.Trends.BackTests;

namespace FleetTrend.Trends.Tests;

public sealed class BackTestTests
{
    private const string Weld = "exhaust/cyl-1/flange-weld";
    private const int LookDays = 14;
    private const int LastDay = 700;

    // Days on which each of six aircraft had a crack, all of them days of a look; an hour a day, a look every 14 h. The first one gets worse from day 560 on.
    private static readonly int[][] Cracks =
    [
        [280, 574, 588, 602, 616, 630, 644, 658, 672, 686],
        [140, 420], [210, 504], [252, 364], [322, 630], [112, 448],
    ];

    [Theory] // Four as-of days a week apart: the weeks stay the same, and periods of four weeks do not.
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(14)]
    [InlineData(21)]
    // The score worked out here from ChangeLikelihood alone, as its documentation says: for each week the looks up to it, cut into four weeks that end on
    // its last day; the rate of the others (1 + n) / (e / (n + 1/2) + e) for one location; counts over their dispersion; the mean over 20 beginnings
    // and five ratios.
    public void A_call_comes_with_the_first_week_whose_score_reaches_the_limit(int daysLater)
    {
        var inputs = new TypeGroupInputs("four", Fleet(), FleetBuilder.AsOf.AddDays(daysLater), new TrendParameters());
        var test = BackTestReplay.Run(inputs);
        var dispersion = inputs.Expectations.AircraftSpreads.Single().Dispersion;
        foreach (var (method, limit) in new[] { (BackTestMethod.Flag, inputs.AircraftLimits.LogFlag), (BackTestMethod.Watch, inputs.AircraftLimits.LogWatch) })
        {
            var expected = Weeks(inputs.AsOfDate).First(week => Score(0, week, dispersion) >= limit);
            var call = Assert.Single(test.Calls, c => c.Method == method && c.Registration == "ZZ-0");
            Assert.Equal(expected, call.Date);
            Assert.Null(call.EndedDate);
            Assert.Equal(("north", Condition.Crack, ""), (call.Base, call.Condition, call.Part));
            Assert.InRange(call.SinceDate!.Value.DayNumber - FleetBuilder.Start.DayNumber, 420, 600);
        }

        var flag = test.Calls.Single(c => c.Method == BackTestMethod.Flag);
        Assert.True(test.Calls.Single(c => c.Method == BackTestMethod.Watch && c.Registration == "ZZ-0").Date <= flag.Date);
        Assert.InRange(flag.Date.DayNumber - FleetBuilder.Start.DayNumber, 574, 660);
    }

    [Fact] // By hand: 30 or 31 h a month and aircraft; the level is that of the twelve months before, of all six together (AlertLevelTests).
    public void An_alert_comes_at_the_end_of_the_month_that_is_above_its_level()
    {
        var test = BackTestReplay.Run(Inputs(Fleet()));
        // Day 574 is 28 Jul 2025, the only crack of that July. Of the months July 2024 to June 2025, day 182 to 546: cracks on days 210 and 252 in July and
        // September (182 to 212, 244 to 273), 280 in October (274 to 304), 322 in November, 364 in December (335 to 365), 420 and 448 in February and March
        // 2025, 504 in May (486 to 516).
        int[] cracks = [1, 0, 1, 1, 1, 1, 0, 1, 1, 0, 1, 0];
        int[] days = [31, 31, 30, 31, 30, 31, 31, 28, 31, 30, 31, 30];
        var level = AlertLevel.Compute(AlertDefinition.MeanPlusTwoDeviations, [.. cracks.Zip(days, (c, d) => new AlertMonth(c, 6.0 * d))], 31).Value;
        var call = test.AlertCalls.Single(c => c.Method == "mean-2-sd" && c.Registration == "ZZ-0" && c.Date == new DateOnly(2025, 7, 31));
        Assert.Equal(1000 / 31.0, call.PerThousandHours!.Value, 6);
        Assert.Equal(level.PerThousandHours, call.LevelPerThousandHours!.Value, 6);
        Assert.Equal(new DateOnly(2025, 12, 31), call.EndedDate); // day 700 is 1 Dec: an hour without a crack, after one or two in each month before
        Assert.Equal((null, null, null), (call.Part, call.Ratio, call.SinceDate));
    }

    [Fact]
    public void Every_method_is_counted_beside_the_others()
    {
        var test = BackTestReplay.Run(Inputs(Fleet()));
        Assert.Equal([BackTestMethod.Watch, BackTestMethod.Flag, .. AlertPractice.All.Select(p => p.Name)], test.Methods.Select(m => m.Name));
        Assert.Equal(6 * LastDay / 365.25, test.AircraftYears, 10);
        Assert.Equal((FleetBuilder.Start, new DateOnly(2026, 1, 1)), (test.FirstDate, test.LastDate));
        foreach (var method in test.Methods)
        {
            var calls = test.Calls.Concat(test.AlertCalls).Where(c => c.Method == method.Name).ToList();
            Assert.Equal(calls.Count, method.Calls);
            Assert.Equal(calls.Count * 50 / test.AircraftYears, method.Per50AircraftYears!.Value, 10);
            Assert.Equal(25, method.CallsByMonth.Count); // January 2024 to January 2026
            foreach (var (month, count) in method.CallsByMonth.Index())
                Assert.Equal(calls.Count(c => 12 * (c.Date.Year - 2024) + c.Date.Month - 1 == month), count);
        }

        var mean = test.Methods.Single(m => m.Name == "mean-2-sd");
        Assert.Equal((1, 1), (mean.FlagsNamed, test.Methods.Single(m => m.Name == BackTestMethod.Flag).Calls));
        Assert.InRange(mean.AlsoWatchedOrFlagged!.Value, 1, mean.Calls - 1); // single cracks of the others are above that level too
        Assert.Null(test.Methods[0].FlagsNamed);
        Assert.EndsWith("at most 5 times in 50 aircraft-years.", test.Methods[0].Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Days_outside_are_replayed_and_not_counted()
    {
        var inputs = Inputs(Fleet());
        var all = BackTestReplay.Run(inputs);
        var flag = all.Calls.Single(c => c.Method == BackTestMethod.Flag);
        var from = BackTestReplay.Run(inputs, since: flag.Date, until: flag.Date);
        Assert.Equal(flag, Assert.Single(from.Calls, c => c.Method == BackTestMethod.Flag));
        Assert.All(from.Calls.Concat(from.AlertCalls), c => Assert.Equal(flag.Date, c.Date));
        var after = BackTestReplay.Run(inputs, since: flag.Date.AddDays(1));
        Assert.Equal(all.Calls.Concat(all.AlertCalls).Where(c => c.Date > flag.Date), after.Calls.Concat(after.AlertCalls));
        Assert.Equal(6 * (FleetBuilder.Start.AddDays(LastDay).DayNumber - flag.Date.DayNumber - 1) / 365.25, after.AircraftYears, 10);
    }

    [Fact] // In the south all three crack far more often from day 560 on: the base is called as a base, by the score and by an alert level.
    public void Bases_are_called_as_bases()
    {
        AircraftObservations[] fleet = [.. Enumerable.Range(0, 6).Select(i => Aircraft(
            i, i < 3 ? "south" : "north", [112 + 14 * i, 336 + 14 * i, .. i < 3 ? new[] { 574, 602, 616, 644, 658, 672 } : [560 + 14 * i]]))];
        var test = BackTestReplay.Run(Inputs(fleet));
        Assert.Contains(test.Calls, c => c.Registration is null && c.Base == "south" && c.Method == BackTestMethod.Watch);
        Assert.Contains(test.AlertCalls, c => c.Registration is null && c.Base == "south");
        Assert.DoesNotContain(test.Calls, c => c.Registration is null && c.Base == "north");
        Assert.True(test.Methods.Single(m => m.Name == BackTestMethod.Watch).BaseCalls > 0);
    }

    [Fact]
    public void Aircraft_in_any_order_and_calls_of_alert_levels_left_out_change_nothing_else()
    {
        var run = BackTestReplay.Run(Inputs([.. Fleet().Reverse()]));
        var counted = BackTestReplay.Run(Inputs(Fleet()), keepAlertCalls: false);
        Assert.NotEmpty(run.AlertCalls);
        Assert.Empty(counted.AlertCalls);
        Assert.Equal(
            JsonSerializer.Serialize(run with { AlertCalls = [] }, TrendJson.Options), JsonSerializer.Serialize(counted, TrendJson.Options));
    }

    [Fact]
    public void Nothing_watched_is_no_rate()
    {
        var test = BackTestReplay.Run(Inputs(new FleetBuilder("ZZ-0").Build()));
        Assert.Equal(0, test.AircraftYears);
        Assert.All(test.Methods, m => Assert.Equal((0, null), (m.Calls, m.Per50AircraftYears)));
        var quiet = BackTestReplay.Run(Inputs(new FleetBuilder("ZZ-0").Watched(Weld, "flange-weld", 0, 400, looks: 5).Build()));
        Assert.Empty(quiet.Calls);
        Assert.All(quiet.Methods, m => Assert.Equal((0, 0.0), (m.Calls, m.Per50AircraftYears)));
    }

    private static IEnumerable<DateOnly> Weeks(DateOnly asOf) => Enumerable.Range(0, 104).Select(w => asOf.AddDays(-7 * w)).Reverse();

    private static double Score(int aircraft, DateOnly week, double dispersion)
    {
        var end = week.DayNumber - FleetBuilder.Start.DayNumber;
        var first = (end - LookDays) / 28;
        int Back(int day) => (end - day) / 28; // periods back from the last, which is 0
        var looks = Enumerable.Range(1, LastDay / LookDays).Select(i => i * LookDays).Where(d => d <= end).ToList();
        if (looks.Count == 0)
            return double.NegativeInfinity;
        var last = Back(looks[^1]);
        var others = Cracks.Where((_, i) => i != aircraft).Sum(c => c.Count(d => d <= end));
        var hours = 5.0 * LookDays * looks.Count;
        var rate = (1 + others) / (hours / (others + 0.5) + hours);
        var own = Cracks[aircraft].Where(d => d <= end).ToList();
        var expected = rate * LookDays * looks.Count;
        var sum = 0.0;
        for (var since = 0; since < Math.Min(20, first); since++)
        {
            var found = own.Count(d => Back(d) <= since);
            var expectedSince = rate * LookDays * looks.Count(d => Back(d) <= since);
            if (found == 0 || expectedSince > expected * (1 - 1e-9))
                continue;
            sum += new[] { 2, 3, 5, 8, 12 }.Average(r => Math.Exp(ChangeLikelihood.LogRatio(
                0.5, own.Count / dispersion, expected / dispersion, found / dispersion, expectedSince / dispersion, r)));
        }

        return last > 0 ? double.NegativeInfinity : Math.Log(sum / 20);
    }

    private static AircraftObservations[] Fleet() => [.. Cracks.Select((days, i) => Aircraft(i, "north", days))];

    private static AircraftObservations Aircraft(int number, string atBase, int[] cracks)
    {
        var aircraft = new FleetBuilder($"ZZ-{number}", atBase).Watched(Weld, "flange-weld", 0, LastDay, looks: LastDay / LookDays + 1);
        foreach (var day in cracks)
            aircraft.Found(Weld, "flange-weld", day);
        return aircraft.Build();
    }

    private static TypeGroupInputs Inputs(params AircraftObservations[] aircraft) => new("four", aircraft, FleetBuilder.AsOf, new TrendParameters());
}
