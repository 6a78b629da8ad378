using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.LeakErosions;

namespace FleetTrend.Trends.Tests;

/// <summary>From the first trace of a leak to an eroded port face, by hand and in words.</summary>
public sealed class LeakErosionTests
{
    private const string Gasket = "exhaust/cyl-3/gasket";
    private const string Face = "exhaust/cyl-3/port-face";

    private static readonly double[] EveryHundred = [.. Enumerable.Range(0, 11).Select(i => 100.0 * i)];

    // By hand. A01: leaks from 100 h on, its face is good at 300 h and eroded at 400 h: eroded 200 to 300 h after. A02: leaks from 200 h on and is
    // re-torqued at
    // 550 h: good for 300 h, at the look of 500 h; that its face is eroded at 900 h comes after. A03: leak and eroded face are found together. A04: leaks from
    // 900 h on, is open, and nobody has looked at its face since. A05 leaks where the layout has no port face; A06 cracks.
    [Fact]
    public void Leaks_are_followed_from_the_first_trace_until_they_are_closed()
    {
        var erosion = Assert.Single(FleetBuilder.Find(Analyses.LeakErosions, Inputs([
            Joint("ZZ-A01").Found(Gasket, "gasket", 100, Condition.LeakTrace, closedBy: ActionKind.Replaced, closedAt: 400)
                .Found(Face, "port-face", 400, Condition.Erosion, lastGood: 300, open: true).Build(),
            Joint("ZZ-A02").Found(Gasket, "gasket", 200, Condition.LeakTrace, closedBy: ActionKind.Retorqued, closedAt: 550)
                .Found(Face, "port-face", 900, Condition.Erosion, lastGood: 800, open: true).Build(),
            Joint("ZZ-A03").Found(Gasket, "gasket", 500, Condition.LeakTrace, closedBy: ActionKind.Replaced, closedAt: 500)
                .Found(Face, "port-face", 500, Condition.Erosion, lastGood: 400, closedBy: ActionKind.Resurfaced, closedAt: 500).Build(),
            Joint("ZZ-A04", until: 900).Found(Gasket, "gasket", 900, Condition.LeakTrace, open: true).LookedAt(Gasket, "gasket", 900)
                .Build(latest: new HoursOnDate(FleetBuilder.Start.AddDays(950), Hours.From(950))),
            new FleetBuilder("ZZ-A05").Found("exhaust/left/clamp", "clamp", 100, Condition.LeakTrace, open: true).Build(),
            Joint("ZZ-A06").Found(Gasket, "gasket", 100, Condition.Crack, open: true).Build()])));
        Assert.Equal((4, 4, 1, 1, 1), (erosion.Leaks, erosion.Aircraft, erosion.ErodedAtFirst, erosion.Eroded, erosion.NotLookedAt));
        Assert.Equal([(50, 0, 2), (100, 0, 2), (200, 0, 2)], erosion.Shares.Select(s => (s.Hours, s.Known, s.Good)));
        Assert.Equal((0.0, 0.0), (erosion.Shares[1].Share.Value, erosion.Shares[1].Share.Lower));
        Assert.Equal(1 - Math.Sqrt(0.025), erosion.Shares[1].Share.Upper!.Value, 9); // none of two
        var open = Assert.Single(erosion.Open);
        Assert.Equal(("ZZ-A04", Gasket, Face, 50, 0, 100, false), (open.Registration, open.Location, open.Face, open.HoursLeft, open.GoodHours,
            open.NextLookHours, open.IsEroded));
        Assert.Null(open.Chance!.Value);
        Assert.Equal(
            "Of 4 leaks at exhaust ports on 4 aircraft 1 had eroded the port face when first seen; of the 3 others 1 did while they were left (1 whose face nobody looked "
            + "at meanwhile).", LeakErosionWords.Statement(erosion));
        Assert.Equal(
            "ZZ-A04, cyl 3 gasket: first seen 50 h ago; next look in 50 h; the chance of an eroded port face cannot be told: 1 case is too few", LeakErosionWords.Statement(open));
    }

    // By hand: leaks that are open together at one joint are one, from the first trace of either until the first is closed; one after that is another.
    [Fact]
    public void Leaks_of_one_joint_that_are_open_together_are_one()
    {
        var leaks = LeftLeak.Find(Joint("ZZ-A01")
            .Found(Gasket, "gasket", 100, Condition.LeakTrace, closedBy: ActionKind.Replaced, closedAt: 500)
            .Found(Face, "port-face", 300, Condition.LeakTrace, closedBy: ActionKind.Replaced, closedAt: 500)
            .Found(Gasket, "gasket", 700, Condition.LeakTrace, open: true).Build()).ToList();
        Assert.Equal([Life.GoodAt(400), Life.GoodAt(300)], leaks.Select(l => l.ForFit()!.Value));
    }

    // Twelve faces erode 100 to 430 h after the first trace, between looks 50 h apart, and one leak is open since 150 h, its face good at 100 h. By
    // hand, with the
    // Weibull law of these lives the chance until its next look at 200 h is 1 - S(200)/S(100); limits are those of SharesFailed, which R has checked.
    [Fact]
    public void An_open_leak_has_the_chance_of_the_others_from_its_last_good_look_to_its_next()
    {
        List<AircraftObservations> fleet = [];
        List<IReadOnlyList<Life>> lives = [];
        double[] looks = [.. Enumerable.Range(0, 21).Select(i => 50.0 * i)];
        for (var i = 0; i < 12; i++)
        {
            var eroded = 200 + (50 * (i % 7));
            fleet.Add(Joint($"ZZ-A{i:00}", at: looks).Found(Gasket, "gasket", 100, Condition.LeakTrace, closedBy: ActionKind.Replaced, closedAt: eroded)
                .Found(Face, "port-face", eroded, Condition.Erosion, lastGood: eroded - 50, open: true).Build());
            lives.Add([Life.FailedBetween(eroded - 150, eroded - 100)]);
        }

        fleet.Add(Joint("ZZ-OPEN", until: 600, at: looks).Found(Gasket, "gasket", 500, Condition.LeakTrace, open: true).LookedAt(Gasket, "gasket", 600)
            .Build(latest: new HoursOnDate(FleetBuilder.Start.AddDays(650), Hours.From(650))));
        lives.Add([Life.GoodAt(100)]);
        var erosion = Assert.Single(FleetBuilder.Find(Analyses.LeakErosions, Inputs(fleet)));
        var open = Assert.Single(erosion.Open);
        Assert.Equal((150, 100, 200), (open.HoursLeft, open.GoodHours, open.NextLookHours));
        var law = LifeFit.Fit(LifeDistribution.Weibull, [.. lives.SelectMany(l => l)]).Value.Model;
        Assert.Equal(1 - (law.Survival(200) / law.Survival(100)), open.Chance!.Value!.Value, 6);
        var expected = SharesFailed.EstimateAhead(LifeDistribution.Weibull, lives, [(0, 50), (0, 100), (0, 200), (100, 100)]).Value;
        Assert.Equal(expected[3].Interval.Lower, open.Chance.Lower!.Value, 9);
        Assert.Equal(expected[3].Interval.Upper, open.Chance.Upper!.Value, 9);
        Assert.Equal(expected.Take(3).Select(s => s.Value), erosion.Shares.Select(s => s.Share.Value!.Value));
        Assert.StartsWith("ZZ-OPEN, cyl 3 gasket: first seen 150 h ago; if it waits for its next look, in 50 h, its port face is eroded by then with a chance of ",
            LeakErosionWords.Statement(open), StringComparison.Ordinal);
    }

    [Fact]
    public void An_eroded_face_of_an_open_leak_is_said_and_has_no_chance()
    {
        var open = Assert.Single(Assert.Single(FleetBuilder.Find(Analyses.LeakErosions, Inputs([
            Joint("ZZ-A01").Found(Gasket, "gasket", 800, Condition.LeakTrace, open: true).Found(Face, "port-face", 1000, Condition.Erosion, lastGood: 900, open: true)
                .Build(latest: new HoursOnDate(FleetBuilder.Start.AddDays(1000), Hours.From(1000)))]))).Open);
        Assert.True(open.IsEroded);
        Assert.Null(open.Chance);
        Assert.Equal("ZZ-A01, cyl 3 gasket: first seen 200 h ago; its port face is eroded already", LeakErosionWords.Statement(open));
    }

    [Theory] // Fleets of one, two and five aircraft, and all in one tail: leaks without a case; what is not known is not told.
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(5, 1)]
    [InlineData(5, 4)]
    public void Without_a_case_it_says_so(int aircraft, int inOneTail)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i => Joint($"ZZ-A0{i}")).ToList();
        for (var i = 0; i < inOneTail; i++)
        {
            var joint = $"exhaust/cyl-{i + 4}";
            fleet[0].Watched($"{joint}/port-face", "port-face", 0, 1000, at: EveryHundred).Found($"{joint}/gasket", "gasket", 700, Condition.LeakTrace, open: true);
        }

        var erosion = Assert.Single(FleetBuilder.Find(Analyses.LeakErosions, Inputs([.. fleet.Select(f => f.Build())])));
        Assert.Contains("We have no case yet of a face that eroded while a leak was left, in ", LeakErosionWords.Statement(erosion), StringComparison.Ordinal);
        Assert.Equal(inOneTail, erosion.Open.Count);
        Assert.All(erosion.Open, o => Assert.EndsWith("cannot be told: we have no case yet", LeakErosionWords.Statement(o), StringComparison.Ordinal));
        Assert.Equal(0.975, erosion.Shares[0].Share.Upper!.Value, 9); // one tail tells as much as one leak
    }

    [Fact]
    public void A_fleet_without_leaks_has_nothing_to_tell() =>
        Assert.Empty(FleetBuilder.Find(Analyses.LeakErosions, Inputs([Joint("ZZ-A00").Build(), new FleetBuilder("ZZ-A01").Build()])));

    private static FleetBuilder Joint(string registration, double until = 1000, double[]? at = null) => new FleetBuilder(registration)
        .Watched(Gasket, "gasket", 0, until, at: [.. (at ?? EveryHundred).Where(h => h <= until)])
        .Watched(Face, "port-face", 0, until, at: [.. (at ?? EveryHundred).Where(h => h <= until)]);

    private static TypeGroupInputs Inputs(IReadOnlyList<AircraftObservations> fleet) => new("four", fleet, FleetBuilder.AsOf, new TrendParameters());
}
