using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Trends.Tests;

public sealed class FlagTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";
    private const string Shroud = "exhaust/shroud/front-edge";

    [Fact] // Ten aircraft of 1,000 h: nine cracks on one, one on each other; expected 1, as AirframeTests derives.
    public void A_drifting_tail_is_flagged_in_a_mechanics_words()
    {
        var flag = Assert.Single(Compute(Drifting()).Flags);
        Assert.Equal((FlagKind.AirframeDrift, "airframe-drift/ZZ-00/Crack"), (flag.Kind, flag.Subject));
        Assert.Equal([Weld], flag.Locations);
        Assert.Contains("ZZ-00 has had 9 cracks where 1.0 would be expected in the same hours", flag.Statement, StringComparison.Ordinal);
        Assert.Contains("9.0 times, 95 % interval", flag.Statement, StringComparison.Ordinal);
        Assert.Contains($"9 of them at {Weld} in 1,000 h watched there", flag.Statement, StringComparison.Ordinal);
        Assert.Contains("the chance of so many would be 1 in ", flag.Statement, StringComparison.Ordinal);
    }

    [Fact] // Common practice, no source: one weld cracking again and again is a symptom of what hangs or strains it.
    public void One_weld_again_and_again_sends_the_mechanic_to_hangers_alignment_and_slip_joints()
    {
        var checks = string.Join('\n', Assert.Single(Compute(Drifting()).Flags).WhatToCheck);
        Assert.All(["crotch of the Y", "hangers", "Alignment", "Slip joints"], word => Assert.Contains(word, checks, StringComparison.Ordinal));
    }

    [Fact] // Common practice, no source: cracks all over point to what shakes or loads the whole system.
    public void Cracks_in_several_places_send_the_mechanic_to_the_whole_system()
    {
        var fleet = Enumerable.Range(0, 10).Select(i =>
        {
            var aircraft = new FleetBuilder($"ZZ-{i:00}");
            for (var w = 0; w < 5; w++)
            {
                aircraft.Watched($"exhaust/cyl-{w}/flange-weld", "flange-weld", 0, 1000);
                for (var k = 0; k < (i == 0 ? 2 : w == 0 ? 1 : 0); k++)
                    aircraft.Found($"exhaust/cyl-{w}/flange-weld", "flange-weld", 100 + (100 * k), closedBy: ActionKind.Replaced, renewed: 150 + (100 * k));
            }
            return aircraft;
        });
        var flag = Assert.Single(Compute([.. fleet]).Flags);
        Assert.StartsWith("exhaust/cyl-1/flange-weld, exhaust/cyl-2/flange-weld, exhaust/cyl-3/flange-weld: Cracks in the weld", flag.WhatToCheck[0], StringComparison.Ordinal);
        Assert.Contains("several places", flag.WhatToCheck[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_drift_that_holds_a_repeat_is_one_flag_that_names_it()
    {
        var flag = Assert.Single(Compute(Drifting(ActionKind.WeldRepaired)).Flags);
        Assert.Equal(FlagKind.AirframeDrift, flag.Kind);
        Assert.Contains("there it came back 8 times with no renewal between (welded 9 times)", flag.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shroud_kept_alive_by_stop_drills_is_flagged_by_count()
    {
        var flag = Assert.Single(Compute([Drilled("ZZ-1", 3), Drilled("ZZ-2", 2)]).Flags);
        Assert.Equal((FlagKind.RepeatLocation, $"repeat-location/ZZ-1/{Shroud}/Crack"), (flag.Kind, flag.Subject));
        Assert.Equal((3, 2.0), (flag.Observed, flag.Expected));
        Assert.Null(flag.PValue);
        Assert.Contains("3 cracks at exhaust/shroud/front-edge since 2024-04-10 with no renewal between (stop-drilled 3 times), the latest 100 h after", flag.Statement, StringComparison.Ordinal);
        Assert.Contains(flag.WhatToCheck, c => c.Contains("Stop-drilled cracks add up", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(2, 0)]
    [InlineData(3, 1)]
    public void Two_repeats_after_the_first_make_a_flag(int cracks, int flags) =>
        Assert.Equal(flags, Compute([Drilled("ZZ-1", cracks)]).Flags.Count);

    [Fact]
    public void A_base_with_short_lives_is_flagged_with_counts_and_both_medians()
    {
        var flag = Assert.Single(new SimulatedFleet { Seed = 1, Welds = 0, SouthLifeFactor = 0.4 }.Compute().Flags);
        Assert.Equal((FlagKind.BasePartLife, "base-part-life/four/south/gasket"), (flag.Kind, flag.Subject));
        Assert.Null(flag.Registration);
        Assert.Contains("Exhaust gasket of four: at south it lasts 0.4", flag.Statement, StringComparison.Ordinal);
        Assert.Contains("half have failed by", flag.Statement, StringComparison.Ordinal);
        Assert.All(["Torque practice", "Calibration", "Faces flat", "Gasket type"], w => Assert.Contains(w, string.Join('\n', flag.WhatToCheck), StringComparison.Ordinal));
    }

    [Fact] // By construction: failures spread evenly over 100 to 1,000 h at one base, all within 480 to 570 h at the other; neither is less long.
    public void Another_shape_with_a_like_median_is_no_short_life()
    {
        var (wide, narrow) = (new FleetBuilder("ZZ-1", "north"), new FleetBuilder("ZZ-2", "south"));
        for (var k = 0; k < 30; k++)
        {
            wide.Life("exhaust/cyl-1/gasket", "gasket", 100 + (30 * k), 130 + (30 * k));
            narrow.Life("exhaust/cyl-1/gasket", "gasket", 480 + (3 * k), 483 + (3 * k));
        }
        var snapshot = Compute([wide, narrow]);
        Assert.All(snapshot.PartLives.Where(t => t.Base is not null), t => Assert.InRange(t.Contrast!.QValue, 0, 0.001));
        Assert.Empty(snapshot.Flags);
    }

    [Fact]
    public void Fewer_events_than_the_least_for_a_drift_raise_none() =>
        Assert.Empty(FleetTrends.Compute(
            [.. Drifting().Select(f => f.Build())], new TrendParameters { MinimumEventsForDrift = 10 }, FleetBuilder.AsOf, "test").Flags);

    [Fact] // What has left the fleet can no longer be looked at.
    public void A_retired_aircraft_is_not_flagged_but_stays_in_the_norm()
    {
        var fleet = Drifting().Select((f, i) => f.Build(retired: i == 0 ? new DateOnly(2025, 6, 1) : null)).ToList();
        var snapshot = FleetTrends.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test");
        Assert.Empty(snapshot.Flags);
        Assert.Equal(9, snapshot.Airframes.Single(s => s.Registration == "ZZ-00").Observed);
    }

    [Fact] // Nine cracks with the exhaust it had then; with another since, there is nothing of it to look at.
    public void An_aircraft_is_not_flagged_for_the_group_that_it_has_left()
    {
        var fleet = Drifting(ActionKind.WeldRepaired).Select((f, i) => f.Build() with { TypeGroup = i == 0 ? "six" : "four" }).ToList();
        Assert.Empty(FleetTrends.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test").Flags);
    }

    [Fact] // The store raises a subject once: a later week with one more crack must name the same subject.
    public void The_subject_stays_the_same_from_week_to_week()
    {
        var before = Compute([Drilled("ZZ-1", 3)]).Flags.Single();
        var after = Compute([Drilled("ZZ-1", 4)]).Flags.Single();
        Assert.Equal(before.Subject, after.Subject);
        Assert.NotEqual(before.Statement, after.Statement);
    }

    private static FleetBuilder[] Drifting(ActionKind? action = null) =>
        [.. Enumerable.Range(0, 10).Select(i =>
        {
            var aircraft = new FleetBuilder($"ZZ-{i:00}").Watched(Weld, "y-weld", 0, 1000);
            for (var k = 0; k < (i == 0 ? 9 : 1); k++)
                aircraft.Found(Weld, "y-weld", 100 + (k * 100), ordinal: k + 1, closedBy: action, renewed: action is null ? 105 + (k * 100) : null);
            return aircraft;
        })];

    private static FleetBuilder Drilled(string registration, int cracks)
    {
        var aircraft = new FleetBuilder(registration).Watched(Shroud, "shroud-edge", 0, 1000);
        for (var k = 0; k < cracks; k++)
        {
            aircraft.Found(
                Shroud, "shroud-edge", 100 + (k * 100), Condition.Crack, k + 1, k == 0 ? null : ActionKind.StopDrilled,
                k == 0 ? null : k * 100, ActionKind.StopDrilled);
        }
        return aircraft;
    }

    private static TrendSnapshot Compute(FleetBuilder[] fleet) =>
        FleetTrends.Compute([.. fleet.Select(f => f.Build())], new TrendParameters(), FleetBuilder.AsOf, "test");
}
