using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends.Tests;

/// <summary>How many spares a base will need, and what is missing.</summary>
public sealed class SpareTests
{
    private const string Number = "gasket, two layers";

    private static DateOnly Today => DateOnly.FromDateTime(FleetBuilder.AsOf.UtcDateTime);

    // By hand: one aircraft flies an hour a day; its latest hours are of today. Two gaskets last seen good at 250 h, now at 300 h, are looked at at
    // 350 h and each
    // 100 h after it: by nothing known of the gaps, the look interval. In 30 days it flies 30 h, and the look 50 h ahead does not come, but for how
    // much aircraft
    // vary: a fifth of 30 h and a tenth of 100 h, 11.7 h, where the two upper nodes of five, 1.36 and 2.86 deviations, give 45.8 h and 63.3 h: only
    // the last, of
    // weight 0.0113, lies beyond the look. In 90 days one look comes (between 64 h and 115 h) and in 180 days two (but for the nodes at 69 h and 291 h).
    [Fact]
    public void Parts_are_found_at_their_looks()
    {
        var inputs = Inputs(Like(), Flying("ZZ-NEW").Life("exhaust/cyl-8/gasket", "gasket", 250, ageNow: 300).Life("exhaust/cyl-9/gasket", "gasket", 250, ageNow: 300));
        var need = Need(inputs);
        var shown = inputs.PartLives.Single(t => t.Base is null).Shown!;
        double S(double age) => 1 - shown.ShareFailedBy(age)!.Value;
        var chance = 1 - S(350) / S(250);
        Assert.Equal((2, 20, 0), (need.Parts, need.Failures, need.Waiting));
        Assert.Equal([30, 90, 180], need.Horizons.Select(h => h.Days));
        // What is not known of the life moves the mean a little: by the bend of the chance in the parameters.
        Assert.Equal(2 * chance, need.Horizons[1].Mean, 2 * chance * 0.1);
        Assert.Equal(0.01125741 * need.Horizons[1].Mean, need.Horizons[0].Mean, 0.0001);
        Assert.True(need.Horizons[2].Mean > 1.7 * need.Horizons[1].Mean);
    }

    // By definition a part that was found failed and is open needs one for certain; one that was repaired needs none, and takes none of the share per failure.
    [Fact]
    public void What_waits_is_needed_for_certain()
    {
        var aircraft = Flying("ZZ-NEW").Life("exhaust/cyl-8/gasket", "gasket", 250, ageNow: 300)
            .Life("exhaust/cyl-1/gasket", "gasket", 200, 300).Found("exhaust/cyl-1/gasket", "gasket", 700, Condition.LeakTrace, open: true)
            .Life("exhaust/cyl-2/gasket", "gasket", 200, 300).Found("exhaust/cyl-2/gasket", "gasket", 600, Condition.LeakTrace, closedBy: ActionKind.Retorqued);
        var need = Need(Inputs(Like(), aircraft));
        Assert.Equal((1, 1), (need.Parts, need.Waiting));
        Assert.Equal(1, need.Horizons[0].First);
        Assert.Equal(0.5, need.PartsPerFailure); // the one of which it is known what was done was tightened again, and one is taken for replaced
        Assert.All(need.Horizons, h => Assert.InRange(h.Mean, 1, 1.5));
        Assert.Contains("1 failed and waits for a part", SpareWords.Notes(need), StringComparison.Ordinal);
    }

    // By hand: on day 100 one gasket failed and two good sisters went out with it, on day 200 one failed alone: 3 and 1 parts, and one more that takes one is
    // counted: two thirds take one, a third three. On day 300 a good one went out with none failed: that is no failure.
    [Fact]
    public void Sisters_go_out_with_a_failure()
    {
        List<ObservedLife> lives =
        [
            Went("a", 0, LifeEnding.Failed), Went("a", 100, LifeEnding.Failed), Went("a", 200, LifeEnding.InService),
            Went("b", 0, LifeEnding.RemovedGood), Went("b", 100, LifeEnding.InService),
            Went("c", 0, LifeEnding.RemovedGood), Went("c", 100, LifeEnding.RemovedGood), Went("c", 300, LifeEnding.InService),
        ];
        var aircraft = Flying("ZZ-A01").Build(latest: new HoursOnDate(Today, Hours.From(731))) with { Lives = lives };
        var each = PartsPerFailure.Count(new TypeGroupInputs("four", [aircraft], FleetBuilder.AsOf, new TrendParameters()))["gasket"];
        Assert.Equal([0, 2 / 3.0, 0, 1 / 3.0], each.Shares);
        Assert.Equal(3 / (8 * 50.0), each.OutGoodPerHour, 12); // eight lives of 50 h each
    }

    // Ten gaskets of one number; the count of 1 Dec said 2, and one went in since: 1 on hand.
    [Fact]
    public void Stock_told_is_held_against_the_need()
    {
        var fleet = Numbered("north", 10);
        var need = Need(Inputs([Like().Build(), .. fleet], Counted("north", 2, lead: 21)), Number);
        Assert.Equal((2, 1, 1), (need.Stock!.Quantity, need.Stock.UsedSince, need.Stock.OnHand));
        var shortage = need.Shortage!.Value;
        Assert.Equal(need.Needed(shortage.Horizon) - 1, shortage.Missing);
        Assert.Equal(
            $"north is short by {shortage.Missing} exhaust gaskets (gasket, two layers) within 90 days: 1 on hand, {shortage.Missing + 1} would be enough with a chance of "
            + "95 %; delivery takes 21 days: order within 9 days",
            SpareWords.Statement(need));
        var later = Need(Inputs([Like().Build(), .. fleet], Counted("north", 2, lead: 45)), Number);
        Assert.EndsWith("delivery takes 45 days: order now", SpareWords.Statement(later), StringComparison.Ordinal);
        var enough = Need(Inputs([Like().Build(), .. fleet], Counted("north", 100, lead: null)), Number);
        Assert.Null(enough.Shortage);
        Assert.StartsWith("north: 99 exhaust gaskets (gasket, two layers) on hand are enough for 180 days", SpareWords.Statement(enough), StringComparison.Ordinal);
    }

    [Fact] // A count of another base or number says nothing here.
    public void Stock_of_another_base_is_not_here() =>
        Assert.Null(Need(Inputs([Like().Build(), .. Numbered("north", 4)], Counted("south", 2, lead: 21)), Number).Stock);

    // By hand: what two type groups need of one number at one base adds up, being independent: the means, and the chance of none is the product.
    [Fact]
    public void A_part_number_of_two_type_groups_stands_once()
    {
        var counts = Counted("north", 2, lead: null);
        var four = FleetBuilder.Find(Analyses.Spares, Inputs([Like().Build(), .. Numbered("north", 4)], counts)).Single(n => n.PartNumber is not null);
        var six = four with { TypeGroups = ["six"] };
        var together = Assert.Single(Analyses.Spares.Order([four, six]));
        Assert.Equal(["four", "six"], together.TypeGroups);
        Assert.Equal(2 * four.Horizons[1].Mean, together.Horizons[1].Mean, 6);
        Assert.Equal(four.Horizons[1].Forecast.Chances[0] * four.Horizons[1].Forecast.Chances[0], together.Horizons[1].Forecast.Chances[0], 6);
        Assert.Equal((8, 2, 2), (together.Parts, together.Stock!.Quantity, together.Stock.UsedSince));
        var kinds = four with { PartNumber = null };
        Assert.Equal(2, Analyses.Spares.Order([kinds, kinds with { TypeGroups = ["six"] }]).Count()); // parts without a number may be other parts
        Assert.Equal(together.ToString(), Analyses.Spares.Order([together]).Single().ToString());
    }

    // By hand: the year before, from the day that is 364 days back, each aircraft flew 2 h a day for 30 days, then 1 h, and 1 h before: 30 days ahead
    // have a season
    // of 2, 60 days of 1.5. The pace of the last 13 weeks is 1 h.
    [Theory]
    [InlineData(30, 2)]
    [InlineData(60, 1.5)]
    [InlineData(364, 394.0 / 364)]
    public void A_season_is_that_of_the_days_ahead(int days, double season)
    {
        var year = Today.AddDays(-364);
        var flown = new HoursByDay([Known(year.AddDays(-200), 0), Known(year, 200), Known(year.AddDays(30), 260), Known(Today, 260 + 334)]);
        var aircraft = new FleetBuilder("ZZ-A01").Build(latest: Known(Today, 594)) with { Hours = flown };
        var utilisation = DueLooks.Utilisation.Estimate(new TypeGroupInputs("four", [aircraft], FleetBuilder.AsOf, new TrendParameters()));
        Assert.Equal(season, utilisation.SeasonOf(days)!.Value, 9);
        Assert.Equal(1, DueLooks.Utilisation.HoursPerDay(aircraft)!.Value, 9);

        HoursOnDate Known(DateOnly day, double hours) => new(day, Hours.From(hours));
    }

    // Looks of this kind came every 50 h, and not every 100 h as the interval says.
    [Fact]
    public void Looks_come_as_they_came()
    {
        var often = Flying("ZZ-NEW").Life("exhaust/cyl-9/gasket", "gasket", 250, ageNow: 290)
            .Watched("exhaust/cyl-9/gasket", "gasket", 0, 700, looks: 15).Watched("exhaust/cyl-8/gasket", "gasket", 0, 700, looks: 15);
        var seldom = Flying("ZZ-NEW").Life("exhaust/cyl-9/gasket", "gasket", 250, ageNow: 290);
        Assert.True(Need(Inputs(Like(), often)).Horizons[0].Mean > 10 * Need(Inputs(Like(), seldom)).Horizons[0].Mean);
    }

    [Theory] // Fleets of 1, 2 and 5 aircraft without a finding: nothing firm, and why.
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Without_failures_nothing_firm_is_said(int count)
    {
        var fleet = Enumerable.Range(1, count).Select(i => Flying($"ZZ-A0{i}").Life("exhaust/cyl-1/gasket", "gasket", 250, ageNow: 300).Build(latest: Latest)).ToArray();
        var need = Assert.Single(FleetBuilder.Find(Analyses.Spares, Inputs(fleet)));
        Assert.Empty(need.Horizons);
        Assert.Null(need.Shortage);
        Assert.Equal((0, count), (need.Parts, need.TooFewFailures));
        Assert.Equal("north: too few exhaust gaskets have failed to say how many will be needed; none went in in the last 365 days", SpareWords.Statement(need));
    }

    [Fact]
    public void Without_ages_nothing_firm_is_said()
    {
        var need = Need(Inputs(Like(), Flying("ZZ-NEW").Life("exhaust/cyl-9/gasket", "gasket", 0, exclusion: LifeExclusion.AgeUnknown)));
        Assert.Equal((0, 1), (need.Parts, need.AgeUnknown));
        Assert.StartsWith("north: the ages of exhaust gaskets are not known, so nothing can be said", SpareWords.Statement(need), StringComparison.Ordinal);
    }

    [Fact] // One of two is of unknown age: what is said of the other is a least.
    public void What_is_not_counted_is_said()
    {
        var need = Need(Inputs(Like(), Flying("ZZ-NEW").Life("exhaust/cyl-9/gasket", "gasket", 250, ageNow: 300)
            .Life("exhaust/cyl-8/gasket", "gasket", 0, exclusion: LifeExclusion.AgeUnknown)));
        Assert.Contains("at least 0 to ", SpareWords.Statement(need), StringComparison.Ordinal);
        Assert.Equal("1 in service of unknown age not counted", SpareWords.Notes(need));
    }

    private static HoursOnDate Latest => new(Today, Hours.From(731));

    private static FleetBuilder Flying(string registration, string atBase = "north") => new(registration, atBase);

    private static ObservedLife Went(string location, int startDay, LifeEnding ending) =>
        Flying("ZZ-A01").Life($"exhaust/{location}/gasket", "gasket", 50, startDay: startDay).Build().Lives[0] with { Ending = ending, HasStart = true };

    /// <summary>Aircraft with four gaskets of one number each, of 200 to 650 h; the last went in after the count.</summary>
    private static AircraftObservations[] Numbered(string atBase, int gaskets) =>
    [
        .. Enumerable.Range(0, gaskets).Select(i =>
        {
            var built = Flying($"ZZ-N{i:00}", atBase).Life("exhaust/cyl-1/gasket", "gasket", 600, ageNow: 650, startDay: i == gaskets - 1 ? 720 : 10).Build(latest: Latest);
            return built with { Lives = [built.Lives[0] with { PartNumber = Number, HasStart = true }] };
        }),
    ];

    private static ObservedStockCount[] Counted(string atBase, int quantity, int? lead) =>
    [
        new(new RecordKey("shop", "shelf", 1), new StockCount { CountDate = Today.AddDays(-31), Base = atBase, PartNumber = Number,
            Quantity = quantity, LeadTimeDays = lead }),
    ];

    /// <summary>Twenty gaskets that failed between 210 and 780 h, elsewhere.</summary>
    private static FleetBuilder Like()
    {
        var like = new FleetBuilder("ZZ-A00", "elsewhere");
        for (var i = 0; i < 20; i++)
            like.Life($"exhaust/cyl-{i}/gasket", "gasket", 180 + 30 * i, 210 + 30 * i);
        return like;
    }

    private static SpareNeed Need(TypeGroupInputs inputs, string? number = null) =>
        FleetBuilder.Find(Analyses.Spares, inputs).Single(n => n.Base == "north" && n.PartNumber == number);

    private static TypeGroupInputs Inputs(FleetBuilder like, FleetBuilder one) => Inputs([like.Build(), one.Build(latest: Latest)]);

    private static TypeGroupInputs Inputs(AircraftObservations[] aircraft, ObservedStockCount[]? counts = null) =>
        new("four", aircraft, FleetBuilder.AsOf, new TrendParameters()) { StockCounts = counts ?? [] };
}
