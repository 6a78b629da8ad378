using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Expectations;
using FleetTrend.Trends.Levels;

namespace FleetTrend.Trends.Tests;

public sealed class ExpectationTests
{
    private const string Weld = "exhaust/cyl-1/flange-weld";

    [Fact] // By hand: an hour a day, 0 to 400 h with looks at 0, 110, 190, 250, 300 and 400 h, of which those at 250 and 300 h found a crack.
    public void Each_look_closes_the_hours_since_the_look_before_on_its_own_day()
    {
        var looks = Inputs(new FleetBuilder("A").Watched(Weld, "flange-weld", 0, 400, at: [0, 110, 190, 250, 300, 400])
            .Found(Weld, "flange-weld", 250).Found(Weld, "flange-weld", 300).Build()).RateLooks.Find(Condition.Crack, _ => true).ToList();
        Assert.Equal([110, 80, 60, 50, 100], looks.Select(l => l.Exposure));
        Assert.Equal([0, 0, 1, 1, 0], looks.Select(l => l.Found));
        Assert.Equal([110, 190, 250, 300, 400], looks.Select(l => l.Date.DayNumber - FleetBuilder.Start.DayNumber));
    }

    [Fact] // Cut at 240 h, where the aircraft changed base: hours up to the cut are those of the base before.
    public void Hours_between_the_last_look_and_a_cut_count_before_it()
    {
        var looks = Inputs(new FleetBuilder("A").Watched(Weld, "flange-weld", 0, 240, segmentBase: "south", at: [0, 100, 200])
            .Watched(Weld, "flange-weld", 240, 300, at: [300]).Build()).RateLooks.Find(Condition.Crack, _ => true).ToList();
        Assert.Equal([("south", 100.0), ("south", 100.0), ("south", 40.0), ("north", 60.0)], looks.Select(l => (l.Base, l.Exposure)));
    }

    [Fact] // Rule 1: what the first look found was there before, and is no event of a rate; hours after the last look are none.
    public void Present_at_entry_and_hours_since_the_last_look_do_not_count()
    {
        var looks = Inputs(new FleetBuilder("A").Watched(Weld, "flange-weld", 100, 300, looks: 3)
            .Found(Weld, "flange-weld", 100, atEntry: true).Build()).RateLooks.Find(Condition.Crack, _ => true).ToList();
        Assert.Equal(200, looks.Sum(l => l.Exposure));
        Assert.Equal(0, looks.Sum(l => l.Found));
    }

    [Fact]
    // By hand: hazards add up. Each life adds H(last age) - H(age at entry) of its like; over all lives of a maximum-likelihood Weibull fit without
    // covariates the sum of them equals the number of failures where ages are exact. Failed within an hour of a look they are, but for half a percent.
    public void Exposure_of_lives_adds_up_to_the_failures()
    {
        var aircraft = Enumerable.Range(0, 12).Select(i => new FleetBuilder($"A{i:00}")
            .Life("exhaust/cyl-1/gasket", "gasket", 299 + 17 * i, 300 + 17 * i)
            .Life("exhaust/cyl-2/gasket", "gasket", 350 + 11 * i, entry: 100, startDay: 100)
            .Watched("exhaust/cyl-2/gasket", "gasket", 100, 600, at: [100, 140, 300, 350 + 11 * i, 600]).Build()).ToList();
        var looks = LifeLooks.Find(Inputs([.. aircraft]), "gasket")!;
        Assert.Equal(12, looks.Sum(l => l.Found));
        Assert.Equal(12, looks.Sum(l => l.Exposure), 0.2);
        // Entered at 100 h on day 100, last seen good at 350 h, looked at on the way at 140 and 300 h; an hour a day. The look at 600 h is at another part.
        var second = looks.Where(l => l.Registration == "A00" && l.Location == "exhaust/cyl-2/gasket").ToList();
        Assert.Equal([140, 300, 350], second.Select(l => l.Date.DayNumber - FleetBuilder.Start.DayNumber));
    }

    [Fact]
    public void Failures_of_parts_with_lives_are_a_class_of_their_own_and_others_come_at_a_rate()
    {
        var aircraft = Enumerable.Range(0, 6).Select(i => new FleetBuilder($"A{i}")
            .Watched(Weld, "flange-weld", 0, 600, looks: 7).Found(Weld, "flange-weld", 100 + i)
            .Watched("exhaust/cyl-1/gasket", "gasket", 0, 600, looks: 7)
            .Found("exhaust/cyl-1/gasket", "gasket", 300 + 17 * i, Condition.LeakTrace)
            .Life("exhaust/cyl-1/gasket", "gasket", 299 + 17 * i, 300 + 17 * i).Build()).ToArray();
        var classes = GroupExpectations.Build(Inputs(aircraft)).ByAircraft.Select(p => p.Class);
        Assert.Equal([new(null, "gasket"), new(Condition.Crack, null)], classes);
    }

    [Fact] // Ages unknown: no life takes part in a fit, and leaks come at a rate as everything else.
    public void Without_ages_failures_come_at_a_rate()
    {
        var aircraft = Enumerable.Range(0, 6).Select(i => new FleetBuilder($"A{i}")
            .Watched("exhaust/cyl-1/gasket", "gasket", 0, 600, looks: 7)
            .Found("exhaust/cyl-1/gasket", "gasket", 300 + 17 * i, Condition.LeakTrace)
            .Life("exhaust/cyl-1/gasket", "gasket", 0, 1, exclusion: Observations.Lives.LifeExclusion.AgeUnknown).Build()).ToArray();
        Assert.Equal([new(Condition.LeakTrace, null)], GroupExpectations.Build(Inputs(aircraft)).ByAircraft.Select(p => p.Class));
    }

    [Fact]
    // By hand: one location, three aircraft of 1,000 h with 8, 2 and 2 cracks. Shape 1 for one location: the rate of the others is
    // (1 + 4) / (2000 / 4.5 + 2000) = 5 / 2444.4 for the first, and (1 + 10) / (2000 / 10.5 + 2000) = 11 / 2190.5 for the second.
    public void Expected_is_the_rate_of_the_others_times_own_hours()
    {
        var aircraft = new[] { ("A", 8), ("B", 2), ("C", 2) }.Select(a => Enumerable.Range(1, a.Item2).Aggregate(
            new FleetBuilder(a.Item1).Watched(Weld, "flange-weld", 0, 700, looks: 8), (b, i) => b.Found(Weld, "flange-weld", 80 * i)).Build()).ToArray();
        var levels = FleetBuilder.Find(new LevelAnalysis(), aircraft);
        Assert.Equal(700 * 5 / (1400 / 4.5 + 1400), levels.Single(l => l.Registration == "A").Expected, 6);
        Assert.Equal(700 * 11 / (1400 / 10.5 + 1400), levels.Single(l => l.Registration == "B").Expected, 6);
        Assert.True(levels.Single(l => l.Registration == "A").ChanceAboveOneAndAHalf > 0.5);
        Assert.True(levels.Single(l => l.Registration == "B").ChanceAboveOneAndAHalf < 0.2);
        Assert.All(levels, l => Assert.Null(l.Location)); // one location of its kind has no others to be beside
        Assert.All(levels, l => Assert.True(l.Ratio.Lower < l.Ratio.Value && l.Ratio.Value < l.Ratio.Upper));
    }

    // By hand: three welds of one kind on two aircraft of 700 h each, with 8, 1 and 1 cracks in 1,400 h: beside the other two the first is expected to
    // have 1,400 x 2 / 2,800 = 1, each of the others 1,400 x 9 / 2,800 = 4.5. The hanger is of another kind, and alone.
    [Fact]
    public void A_location_is_beside_the_others_of_its_kind()
    {
        var aircraft = new[] { "A", "B" }.Select(name =>
        {
            var builder = new FleetBuilder(name).Watched("exhaust/hanger", "hanger", 0, 700, looks: 8);
            for (var w = 0; w < 3; w++)
            {
                builder.Watched($"exhaust/cyl-{w}/flange-weld", "flange-weld", 0, 700, looks: 8);
                for (var k = 0; k < (w == 0 ? 4 : name == "A" ? 1 : 0); k++)
                    builder.Found($"exhaust/cyl-{w}/flange-weld", "flange-weld", 100 + 100 * k);
            }

            return builder.Build();
        }).ToArray();
        var levels = FleetBuilder.Find(new LevelAnalysis(), aircraft).Where(l => l.Location is not null).ToDictionary(l => l.Location!, StringComparer.Ordinal);
        Assert.Equal(["exhaust/cyl-0/flange-weld", "exhaust/cyl-1/flange-weld", "exhaust/cyl-2/flange-weld"], levels.Keys.Order(StringComparer.Ordinal));
        Assert.Equal((8, 1.0), (levels["exhaust/cyl-0/flange-weld"].Found, levels["exhaust/cyl-0/flange-weld"].Expected));
        Assert.Equal((1, 4.5), (levels["exhaust/cyl-1/flange-weld"].Found, levels["exhaust/cyl-1/flange-weld"].Expected));
        Assert.InRange(levels["exhaust/cyl-0/flange-weld"].Ratio.Value!.Value, 1, 8); // between its like and what it shows
        Assert.True(levels["exhaust/cyl-0/flange-weld"].ChanceAboveOneAndAHalf > 0.5);
    }

    [Fact]
    public void Sub_assemblies_are_the_beginnings_of_paths()
    {
        var builder = new FleetBuilder("A");
        foreach (var path in new[] { "exhaust/cyl-1/flange-weld", "exhaust/cyl-1/y-weld", "exhaust/cyl-2/flange-weld", "induction/cyl-1/weld" })
            builder.Watched(path, "flange-weld", 0, 300, looks: 4).Found(path, "flange-weld", 200);
        var panel = GroupExpectations.Build(Inputs(builder.Build())).ByAircraft.Single();
        Assert.Equal(
            ["", "exhaust", "exhaust/cyl-1", "exhaust/cyl-1/flange-weld", "exhaust/cyl-1/y-weld", "exhaust/cyl-2/flange-weld", "induction/cyl-1/weld"],
            panel.Panel.Scopes.Select(s => s.Name));
    }

    private static TypeGroupInputs Inputs(params AircraftObservations[] aircraft) => new("four", aircraft, FleetBuilder.AsOf, new TrendParameters());
}
