using System.Text.Json;
using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Simulations;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Trends.Tests;

/// <summary>Forecasts as they were published, held against what then happened.</summary>
public sealed class ScoreTests
{
    private const string Gasket = "exhaust/cyl-1/gasket";

    // By hand. An hour is a day; the first day of 2024 is hour 0. The life distribution is exponential, with a mean of 1,000 h in what was kept on 1
    // Apr (hour 91),
    // and of 500 h in what was kept on 1 Jul (hour 182). Looks at 50, 150, 250, 350 h; the last finds the part failed. That of 50 h came before any
    // forecast. In
    // April to June one look of 100 h: 1 - exp(-0.1). In July to September, 1 - exp(-0.2); in October to December the same, and found failed.
    [Fact]
    public void A_look_has_the_chance_of_its_hours_by_what_was_published_last()
    {
        var scores = Find(Day(400), [Failing().Build()], [Law(Day(91), 1_000), Law(Day(182), 500)]);
        Assert.Equal(
            [(new DateOnly(2025, 1, 1), false), (new DateOnly(2024, 10, 1), true), (new DateOnly(2024, 7, 1), true), (new DateOnly(2024, 4, 1), true)],
            scores.Select(s => (s.Quarter.StartDate, s.IsOver)));
        Assert.Equal([0, 1, 1, 1], scores.Select(s => s.Chances!.Looks));
        Assert.Equal([0, 1, 0, 0], scores.Select(s => s.Chances!.Found));
        Assert.Equal([0, 1 - Math.Exp(-0.2), 1 - Math.Exp(-0.2), 1 - Math.Exp(-0.1)], scores.Select(s => s.Chances!.Expected), new Within(1e-5));
        Assert.Equal(2 * (1 - Math.Exp(-0.2)), scores[1].ChancesOfTwo!.Expected, 5);
        Assert.Equal((2, 1), (scores[1].ChancesOfTwo!.Looks, scores[1].ChancesOfTwo!.Found));
        Assert.Null(scores[0].ChancesOfTwo); // the quarter is not over
        Assert.Equal(Day(92), scores[3].Chances!.FromDate);
        var json = JsonSerializer.Serialize(scores, TrendJson.Options);
        Assert.Equal(json, JsonSerializer.Serialize(Analyses.Scores.Read(json), TrendJson.Options));
    }

    [Fact] // A base that has a life distribution of its own is scored by it; a kind without one is not scored.
    public void A_look_is_scored_by_the_law_of_its_base_and_kind()
    {
        LifeLaw[] laws = [.. Law(Day(91), 1_000).Items, Law(Day(91), 250).Items[0] with { Base = "south" }];
        AircraftObservations[] fleet =
        [
            Failing().Build(), Failing("ZZ-A02", "south").Build(),
            new FleetBuilder("ZZ-A03").Watched("exhaust/clamp-1", "clamp", 0, 350, at: [50, 150, 250, 350]).Life("exhaust/clamp-1", "clamp", 250, 350).Build(),
        ];
        var score = Find(Day(200), fleet, [new Kept<LifeLaw>(At(Day(91)), laws)])[^1];
        Assert.Equal(2 - Math.Exp(-0.1) - Math.Exp(-0.4), score.Chances!.Expected, 5);
        Assert.Equal(2, score.Chances.Looks);
    }

    [Fact] // What comes late changes what was found, and never what was foreseen of the looks that were known.
    public void Late_records_change_the_outcome_and_not_the_forecast()
    {
        var known = new FleetBuilder("ZZ-A01").Watched(Gasket, "gasket", 0, 350, at: [50, 150, 250, 350]).Life(Gasket, "gasket", 350);
        Kept<LifeLaw>[] kept = [Law(Day(91), 1_000)];
        var (before, after) = (Find(Day(400), [known.Build()], kept), Find(Day(400), [Failing().Build()], kept));
        Assert.Equal(before.Select(s => s.Chances!.Expected), after.Select(s => s.Chances!.Expected));
        Assert.Equal((0, 1), (before.Sum(s => s.Chances!.Found), after.Sum(s => s.Chances!.Found)));
    }

    [Fact]
    public void Without_a_forecast_there_is_no_score()
    {
        Assert.Empty(Find(Day(400), [Failing().Build()], []));
        Assert.StartsWith("Nothing is scored yet", ScoreWords.Answer([]), StringComparison.Ordinal);
    }

    [Theory] // Fleets of one, two and five aircraft with a look or two: counted, not judged.
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Too_few_looks_are_not_judged(int aircraft)
    {
        var fleet = Enumerable.Range(1, aircraft).Select(i => Failing($"ZZ-A0{i}").Build()).ToArray();
        var scores = Find(Day(400), fleet, [Law(Day(91), 1_000)]);
        Assert.All(scores, s => Assert.Null(s.ChancesOfTwo?.IsOff));
        Assert.Equal("Too little has happened in the last two quarters to judge any forecast.", ScoreWords.Answer(scores));
        Assert.EndsWith("would fit): too few looks to judge.", ScoreWords.Chance(scores[1].Quarter, scores[1].ChancesOfTwo!), StringComparison.Ordinal);
        Assert.Empty(ScoreWords.ChancesOff(scores));
    }

    [Fact]
    public void What_was_kept_is_read_as_it_was_written()
    {
        var inputs = new TypeGroupInputs("four", new SimulatedFleet { Seed = 5 }.Build(), new SimulatedFleet { Seed = 5 }.AsOf, new TrendParameters());
        var calibration = Assert.Single(FleetBuilder.Find(Analyses.ChanceCalibrations, inputs));
        var spares = FleetBuilder.Find(Analyses.Spares, inputs);
        var written = KeptForecasts.Write(FleetBuilder.Find(Analyses.Fleet, inputs), [calibration], spares, FleetBuilder.Find(Analyses.DueLooks, inputs));
        var kept = KeptForecasts.Read([.. written.Select(f => (f.Name, FleetBuilder.AsOf, f.Detail))]);
        var law = Assert.Single(Assert.Single(kept.Laws).Items);
        var fit = inputs.LifeLaws.Of("gasket", "north")!.Fit!;
        Assert.Equal(fit.Model.ConditionalFailure(300, 100), law.Estimate!.ChanceAhead(300, 100).Chance, 12);
        Assert.Equal(fit.LogCovariance, law.Estimate.Covariance);
        var north = Assert.Single(kept.Spares).Items.Single(b => b.Base == "north");
        Assert.Equal(Enumerable.Range(0, 10).Select(i => $"ZZ-{2 * i:000}"), north.Aircraft); // even ones are there
        var (need, horizon) = (spares.Single(s => s.Base == "north"), Assert.Single(north.Spares).Horizons[1]);
        var interval = need.IntervalOf(need.Horizons[1]);
        Assert.Equal((90, interval.Lower, interval.Upper), (horizon.Days, horizon.Lower, horizon.Upper));
        var chances = need.Horizons[1].Forecast.Chances; // the variance by its definition
        Assert.Equal(chances.Select((c, i) => c * i * i).Sum() - Math.Pow(chances.Select((c, i) => c * i).Sum(), 2), horizon.Variance, 4);
    }

    // A simulated operator over three years through the analyses of the product, forecasts kept as they were published. Lives as foreseen: every verdict is
    // "within". Lives halved from July 2024 on, for all parts: by the end of the second quarter the chances are off, and they say so.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Three_years_of_an_operator_are_within_the_stated_error_until_lives_are_halved(bool isHalved)
    {
        var planted = Quarter.Of(new DateOnly(2024, 7, 1));
        var from = isHalved ? planted.StartDate.DayNumber - SimulatedOperator.Start.DayNumber : (int?)null;
        var scores = ScoredYears.Run(
            new SimulatedOperator(new Random(11), aircraft: 24, ScoredYears.Days, halvedFrom: from), ScoredYears.First, ScoredYears.Until);
        Assert.Equal(12, scores.Count);
        var until = scores.Where(s => s.Quarter.StartDate < planted.StartDate).ToList();
        Assert.All(until, s => Assert.False(s.ChancesOfTwo!.IsOff));
        Assert.True(until.Count(s => s.Chances!.IsOutside) <= 1); // of six at 95 %
        var second = scores.Single(s => s.Quarter == planted.Next);
        Assert.Equal(isHalved, second.ChancesOfTwo!.IsOff);
        if (isHalved)
        {
            Assert.True(second.SparesOfTwo!.IsOff);
            var off = Assert.Single(ScoreWords.ChancesOff(scores.Where(s => s.Quarter.StartDate <= second.Quarter.StartDate)));
            Assert.EndsWith("would fit): these chances are off.", off, StringComparison.Ordinal);
        }
        else
        {
            Assert.All(scores, s => Assert.False(s.ChancesOfTwo!.IsOff));
            Assert.All(scores, s => Assert.False(s.SparesOfTwo!.IsOff));
            var told = scores.Select(s => s.Spares!.Judged!).ToList();
            Assert.True(told.Sum(t => t.Forecasts - t.Held) <= 4, "of 24 ranges that hold 95 of 100"); // more has a chance of 0.03 by the binomial
        }
    }

    // By hand, from the forecast of day 100 on, for 90 days. Gasket 1 is found failed on day 150 and replaced, its good sister 2 with it: two.
    // Gasket 3 had failed by day
    // 90 and is replaced on day 130: one. Gasket 4 is found failed and re-torqued: none. Gasket 5 is found failed on day 250: one more by then.
    // Gasket 6 goes out
    // good by itself: none.
    [Fact]
    public void Needed_are_the_parts_that_failures_took()
    {
        var aircraft = new FleetBuilder("ZZ-A01").Found(Place(4), "gasket", 160, Condition.LeakTrace, closedBy: ActionKind.Retorqued).Build() with
        {
            Lives =
            [
                Went(1, 0, 100, 150), Went(1, 150, 0), Went(2, 0, 150), Went(2, 150, 0), Went(3, 0, 50, 90), Went(3, 130, 0), Went(4, 0, 100, 160),
                Went(5, 0, 200, 250), Went(6, 0, 140), Went(6, 140, 0),
            ],
        };
        var parts = new NeededParts(aircraft, "four");
        Assert.Equal(3, parts.Count("gasket", "G-7", Day(100), Day(190)));
        Assert.Equal(4, parts.Count("gasket", "G-7", Day(100), Day(260)));
        Assert.Equal(0, parts.Count("gasket", "G-8", Day(100), Day(260)));
        Assert.Equal(0, parts.Count("clamp", "G-7", Day(100), Day(260)));
        Assert.Equal(1, parts.Count("gasket", "G-7", Day(200), Day(260)));

        // Held against a forecast: 3 where 2 were expected and 0 to 5 said; the one that said "at least" is not scored, nor the one of 180 days
        // before they are over.
        KeptHorizon[] horizons = [new(90, 2, 2, 0, 5), new(180, 4, 4, 1, 8)];
        var spare = new KeptSpare { Kind = "gasket", PartNumber = "G-7", IsAtLeast = false, Horizons = horizons };
        var kept = new KeptForecasts { Spares = [new Kept<KeptBase>(At(Day(100)), [new KeptBase("north", ["ZZ-A01"], [spare, spare with { IsAtLeast = true }])])] };
        var score = FleetBuilder.Find(Analyses.Scores, new TypeGroupInputs("four", [aircraft], At(Day(200)), new TrendParameters()) { Forecasts = kept })
            .Single(s => s.Spares is not null);
        var told = Assert.Single(score.Spares!.Horizons);
        Assert.Equal((90, 1, 1, 1, 2.0, 3, 0, 5), (told.Days, told.Forecasts, told.Held, told.AtLeast, told.Expected, told.Needed, told.Lower, told.Upper));
        Assert.Equal((Day(100), 90), (score.Spares.KeptDate, score.Spares.JudgedDays));
        Assert.False(score.SparesOfTwo!.IsOff);
    }

    // By hand; an hour is a day. All were to be looked at by day 120, at 120 h. Looked at on day 115: met. On day 130: late. Never: open. One flies
    // on a meter that
    // was 10 h behind: it had 120 h on day 130, 10 days late, and its look on that day came before more was flown.
    [Fact]
    public void Days_that_were_named_are_held_against_looks_and_hours()
    {
        AircraftObservations[] fleet = [Looked("ZZ-A01", 50, 115), Looked("ZZ-A02", 50, 130), Looked("ZZ-A03", 50), Looked("ZZ-A04", 50, 120) with { Hours = Behind() }];
        KeptDue[] dues = [.. fleet.Select(a => new KeptDue(a.Registration, Gasket, Day(120), 120))];
        var kept = new KeptForecasts { DueLooks = [new Kept<KeptDue>(At(Day(91)), dues)] };
        var score = FleetBuilder.Find(Analyses.Scores, new TypeGroupInputs("four", fleet, At(Day(300)), new TrendParameters()) { Forecasts = kept })
            .Single(s => s.DueLooks is not null);
        Assert.Equal(
            new DueScore { Named = 4, Met = 2, Late = 1, Open = 1, Flown = 4, WithinWeek = 3, MedianDaysLate = 0 }, score.DueLooks);
    }

    // Four flags: the first acted on in April, found to have helped in July, and its subject flagged again in August; the second closed as nothing;
    // the third a watch that
    // became a flag; the fourth is the one of August. Two aircraft over 91 days make 0.498 years, of which the parameters allow 5 calls in 50: 0.05.
    [Fact]
    public void Calls_are_held_against_what_people_made_of_them()
    {
        FlagStep[] steps =
        [
            Step(1, "a", 95, FlagState.Open, 95), Step(1, "a", 95, FlagState.ActedOn, 100), Step(2, "b", 100, FlagState.Watch, 100),
            Step(2, "b", 100, FlagState.Closed, 110), Step(3, "c", 120, FlagState.Watch, 120), Step(3, "c", 120, FlagState.Open, 140),
            Step(1, "a", 95, FlagState.Helped, 190), Step(4, "a", 220, FlagState.Open, 220),
        ];
        AircraftObservations[] fleet = [Failing().Build(), Failing("ZZ-A02").Build()];
        var scores = FleetBuilder.Find(Analyses.Scores, new TypeGroupInputs("four", fleet, At(Day(300)), new TrendParameters()) { FlagSteps = steps });
        var spring = scores.Single(s => s.Quarter.StartDate == new DateOnly(2024, 4, 1));
        Assert.Equal(
            new CallScore { Flags = 2, Watches = 1, ActedOn = 1, Helped = 1, NoBetter = 0, ClosedAsNothing = 1, Open = 1, ExpectedFalse = 0.05 }, spring.Calls);
        Assert.Equal(new EffectScore(1, 1), scores.Single(s => s.Quarter.StartDate == new DateOnly(2024, 7, 1)).Effects);
        Assert.Null(spring.Effects);
        var lasting = FleetBuilder.Find(Analyses.Scores, new TypeGroupInputs("four", fleet, At(Day(300)), new TrendParameters()) { FlagSteps = steps[..^1] });
        Assert.Equal(1, lasting.Single(s => s.Effects is not null).Effects!.Lasted);
    }

    private static FlagStep Step(long flag, string subject, int raised, FlagState state, int day) => new(flag, subject, At(Day(raised)), state, At(Day(day)));

    private static AircraftObservations Looked(string registration, params double[] at) =>
        new FleetBuilder(registration).Watched(Gasket, "gasket", 0, at[^1], at: at).Build();

    private static HoursByDay Behind() => new([new HoursOnDate(Day(10), Hours.Zero), new HoursOnDate(Day(10_000), Hours.From(9_990))]);

    private static string Place(int gasket) => $"exhaust/cyl-{gasket}/gasket";

    private static ObservedLife Went(int gasket, int startDay, double good, double? bad = null) =>
        new FleetBuilder("ZZ-A01").Life(Place(gasket), "gasket", good, bad, startDay: startDay).Build().Lives[0] with { HasStart = true, PartNumber = "G-7" };

    private static FleetBuilder Failing(string registration = "ZZ-A01", string atBase = "north") => new FleetBuilder(registration, atBase)
        .Watched(Gasket, "gasket", 0, 350, at: [50, 150, 250, 350]).Life(Gasket, "gasket", 250, 350);

    private static Kept<LifeLaw> Law(DateOnly day, double mean) => new(
        At(day), [new LifeLaw("gasket", null, "Weibull", 20, 40) { Estimate = new LifeEstimate(LifeDistribution.Weibull, mean, 1, new LogCovariance(0, 0, 0)) }]);

    private static IReadOnlyList<Score> Find(DateOnly today, AircraftObservations[] fleet, Kept<LifeLaw>[] laws) =>
    [
        .. Analyses.Scores.Order(FleetBuilder.Find(
            Analyses.Scores, new TypeGroupInputs("four", fleet, At(today), new TrendParameters()) { Forecasts = new KeptForecasts { Laws = laws } })),
    ];

    private static DateTimeOffset At(DateOnly day) => new(day, new TimeOnly(6, 0), TimeSpan.Zero);

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);

    private sealed class Within(double error) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= error;

        public int GetHashCode(double obj) => 0;
    }
}
