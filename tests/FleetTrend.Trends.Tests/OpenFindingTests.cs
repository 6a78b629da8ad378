using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.OpenFindings;

namespace FleetTrend.Trends.Tests;

/// <summary>What is open now, and in which order.</summary>
public sealed class OpenFindingTests
{
    private const string Gasket = "exhaust/cyl-1/gasket";
    private const string Weld = "exhaust/cyl-3/flange-weld";
    private const string Baffle = "exhaust/muffler/baffle";
    private const string Coupling = "induction/cyl-2/coupling";

    // By hand, at 900 h: the leak of 812 h was seen again at 870 h, so 88 h since first seen, 30 h since looked at, and 5 mm more in 58 h. The piece has
    // been missing for 20 h. Nobody has looked at the weld since 700 h: 200 h of both. What was closed is not open.
    [Fact]
    public void Leaks_come_first_then_missing_pieces_then_the_others()
    {
        var open = Find(Troubled().Build(latest: At(900)));
        Assert.Equal([Condition.LeakTrace, Condition.MissingPiece, Condition.Crack], open.Select(f => f.Condition));
        Assert.Equal([Gasket, Baffle, Weld], open.Select(f => f.Location));
        Assert.Equal([88, 20, 200], open.Select(f => f.HoursSinceFound));
        Assert.Equal([30, 20, 200], open.Select(f => f.HoursSinceLook));
        Assert.Equal((4, 9, 58), (open[0].FirstMillimetres, open[0].LastMillimetres, open[0].GrowthHours));
        Assert.Equal([ActionKind.Deferred, ActionKind.Monitored, null], open.Select(f => f.LeftBy));
        Assert.Equal(
            "ZZ-A00, cyl 1 gasket: leak trace (9.0 mm, 4.0 mm 58 h before), deferred on 23 Mar 2026; first seen 88 h ago, last looked at 30 h ago",
            OpenFindingWords.Statement(open[0]));
        Assert.Equal(
            "ZZ-A00, cyl 3 flange weld: crack, no action recorded; first seen 200 h ago, last looked at 200 h ago", OpenFindingWords.Statement(open[2]));
        Assert.Equal(2, open[0].Evidence.Count); // the finding, and the last look
        Assert.Single(open[2].Evidence);
    }

    [Fact]
    public void Of_one_condition_the_longest_open_comes_first_whatever_the_aircraft()
    {
        var fleet = new[] { (Mark: "ZZ-A01", Found: 850.0), ("ZZ-A02", 790), ("ZZ-A03", 820) }
            .Select(f => new FleetBuilder(f.Mark).Found(Weld, "flange-weld", f.Found, open: true).Build(latest: At(900))).ToArray();
        Assert.Equal(["ZZ-A02", "ZZ-A03", "ZZ-A01"], Find(fleet).Select(f => f.Registration));
    }

    [Fact]
    public void Each_leak_and_missing_piece_has_the_caution_that_belongs_to_it()
    {
        var cautions = Find(Troubled().Found(Coupling, "coupling", 890, Condition.LeakTrace, open: true).Build(latest: At(900)))
            .ToDictionary(f => f.Location, OpenFindingWords.Caution);
        Assert.Contains("carbon monoxide", cautions[Gasket], StringComparison.Ordinal);
        Assert.Contains("fuel lines", cautions[Gasket], StringComparison.Ordinal);
        Assert.Contains("can burn", cautions[Coupling], StringComparison.Ordinal);
        Assert.DoesNotContain("carbon monoxide", cautions[Coupling], StringComparison.Ordinal);
        Assert.Contains("block the exhaust", cautions[Baffle], StringComparison.Ordinal);
        Assert.Null(cautions[Weld]);
    }

    [Fact]
    public void Of_an_aircraft_that_left_the_fleet_nothing_is_open() =>
        Assert.Empty(Find(Troubled().Build(retired: new DateOnly(2025, 1, 1), latest: At(900))));

    // It cracked while it flew in another type group; it is open still, on the aircraft as it flies now, and once.
    [Fact]
    public void What_was_found_in_an_earlier_type_group_is_open_in_the_present_one()
    {
        var moved = new FleetBuilder("ZZ-A00").Found(Weld, "flange-weld", 500, group: "six", open: true).Build(latest: At(900));
        Assert.Equal("four", Assert.Single(Find(moved)).TypeGroup);
        Assert.Empty(FleetBuilder.Find(Analyses.OpenFindings, [moved], "six"));
    }

    [Theory] // None open, one, and all in one tail of five.
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(5, 7)]
    public void Small_fleets_have_what_they_have(int aircraft, int findings)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i => new FleetBuilder($"ZZ-A0{i}")).ToList();
        for (var i = 0; i < findings; i++)
            fleet[^1].Found($"exhaust/cyl-{i}/flange-weld", "flange-weld", 100 + i, open: true);
        var open = Find([.. fleet.Select(f => f.Build(latest: At(900)))]);
        Assert.Equal(findings, open.Count);
        Assert.All(open, f => Assert.Equal($"ZZ-A0{aircraft - 1}", f.Registration));
    }

    [Fact] // Two cracks at one place found in one look, one repaired: the other is open.
    public void Two_at_one_location_are_two()
    {
        var open = Find(new FleetBuilder("ZZ-A00").Found(Weld, "flange-weld", 700, open: true).Found(Weld, "flange-weld", 700, open: true, ordinal: 2)
            .Found(Weld, "flange-weld", 700, ordinal: 3).Found(Gasket, "gasket", 710, Condition.LeakTrace, open: true).Build(latest: At(900)));
        Assert.Equal([Gasket, Weld, Weld], open.Select(f => f.Location));
    }

    [Fact] // Without any hours there is nothing to count from.
    public void Without_hours_it_is_listed_all_the_same() => Assert.Equal(0, Assert.Single(Find(
        new FleetBuilder("ZZ-A00").Found(Weld, "flange-weld", 700, open: true).Build())).HoursSinceFound);

    private static FleetBuilder Troubled() => new FleetBuilder("ZZ-A00")
        .Found(Weld, "flange-weld", 700, open: true)
        .Found(Weld, "flange-weld", 400, closedBy: ActionKind.WeldRepaired)
        .Found(Gasket, "gasket", 812, Condition.LeakTrace, open: true, actions: [(ActionKind.Deferred, 812)], sizes: [(812, 4), (870, 9)])
        .Found(Baffle, "muffler-baffle", 880, Condition.MissingPiece, open: true, actions: [(ActionKind.Monitored, 880)])
        .LookedAt(Gasket, "gasket", 870)
        .LookedAt(Weld, "flange-weld", 700)
        .LookedAt(Baffle, "muffler-baffle", 880);

    private static List<OpenFinding> Find(params AircraftObservations[] aircraft) =>
        [.. Analyses.OpenFindings.Order(FleetBuilder.Find(Analyses.OpenFindings, aircraft))];

    private static HoursOnDate At(double hours) => new(FleetBuilder.Start.AddDays((int)hours), Hours.From(hours));
}
