using FleetTrend.Observations;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Tests;

public sealed class FlagTests
{
    [Fact] // Planted: aircraft 0 cracks eight times as often from 530 h on.
    public void A_tail_that_gets_worse_is_flagged_in_a_mechanics_words()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        var flag = Flag(fleet, "airframe-drift/ZZ-000/Crack");
        Assert.Equal((FlagKind.AirframeDrift, FlagTier.Flag, "ZZ-000", "north"), (flag.Kind, flag.Tier, flag.Registration, flag.Base));
        Assert.Matches(
            @"^\d+ cracks on ZZ-000 since about \w+ 202\d, \d of them at cyl \d flange weld\. Similar aircraft would give [\d.]+ in the same looks\. "
                + @"Before that it had \d+ where similar aircraft would give [\d.]+\. Chance alone would raise a call like this (about|less than) once in [\d,]+ aircraft-years\.$",
            flag.Statement);
        // By definition: what it had since, and what it had before, are all that it had.
        Assert.Equal(fleet[0].Events.Count, flag.Observed + flag.Change!.FoundBefore);
        Assert.Equal(flag.Observed, flag.Change.Locations.Sum(l => l.Found));
        Assert.Equal(fleet[0].Events.Count(e => e.FoundDate >= flag.SinceDate), flag.Observed);
        Assert.Equal((flag.Observed, flag.Observed / flag.Expected!.Value), (flag.Ratio.Events, flag.Ratio.Value!.Value));
        Assert.Equal(1, flag.Change.FalseCallsPer50AircraftYears);
        Assert.Null(flag.QValue);
    }

    [Fact]
    public void A_tail_that_always_ran_high_is_not_flagged() => Assert.DoesNotContain(
        Compute(ChangingFleet.Build(1, (aircraft, _, _) => aircraft == 1 ? 3 : 1)).Flags, f => f.Registration == "ZZ-001" && f.Tier == FlagTier.Flag);

    [Fact] // The limits are choices: where chance may raise nearly no flag but many watches, the same tail is watched.
    public void The_allowed_false_calls_decide_between_a_watch_and_a_flag()
    {
        var parameters = new TrendParameters { FlagsPer50AircraftYears = 0.1, WatchesPer50AircraftYears = 50 };
        var fleet = ChangingFleet.Build(1, (aircraft, _, hours) => aircraft == 0 && hours > 530 ? 4 : 1);
        var flag = FleetBuilder.Compute(fleet, parameters, FleetBuilder.AsOf, "test").Flags.Single(f => f.Registration == "ZZ-000");
        Assert.Equal((FlagTier.Watch, 50), (flag.Tier, flag.Change!.FalseCallsPer50AircraftYears));
    }

    [Fact] // Common practice, no source: one weld cracking again and again is a symptom of what hangs or strains it.
    public void One_weld_that_gets_worse_sends_the_mechanic_to_hangers_alignment_and_slip_joints()
    {
        var flag = Flag(
            ChangingFleet.Build(2, (aircraft, weld, hours) => aircraft == 3 && weld == 0 && hours > 480 ? 30 : 1), "airframe-drift/ZZ-003/Crack");
        Assert.Equal("exhaust/cyl-0/flange-weld", flag.Locations[0]);
        Assert.StartsWith("Cyl 0 flange weld: Cracks in the weld", flag.WhatToCheck[0], StringComparison.Ordinal);
        var checks = string.Join('\n', flag.WhatToCheck);
        Assert.All(["hangers", "Alignment", "Slip joints"], word => Assert.Contains(word, checks, StringComparison.Ordinal));
    }

    [Fact] // Common practice, no source: cracks all over point to what shakes or loads the whole system.
    public void Cracks_in_several_places_send_the_mechanic_to_the_whole_system()
    {
        var checks = Flag(ChangingFleet.OneGetsWorse(), "airframe-drift/ZZ-000/Crack").WhatToCheck;
        Assert.Matches("^Cyl . flange weld, cyl . flange weld, cyl . flange weld: Cracks in the weld", checks[0]);
        Assert.Contains("several places", checks[1], StringComparison.Ordinal);
    }

    [Fact] // Planted: the aircraft of one base of two crack four times as often over the last 200 h.
    public void A_base_that_gets_worse_is_flagged()
    {
        var flag = Flag(ChangingFleet.Build(3, (aircraft, _, hours) => aircraft % 2 == 1 && hours > 530 ? 4 : 1), "base-drift/four/south/Crack");
        Assert.Equal((FlagKind.BaseDrift, null, "south"), (flag.Kind, flag.Registration, flag.Base));
        Assert.Matches(@"^\d+ cracks on aircraft of four at south since about \w+ 202\d, .* The other bases would give ", flag.Statement);
    }

    [Fact] // Planted: gaskets of one tail last a fifth as long from 300 h on.
    public void A_tail_whose_parts_fail_more_often_is_flagged_for_its_parts()
    {
        var flag = Flag(ChangingFleet.GasketsOfOneGetWorse(), "airframe-part-drift/ZZ-000/gasket");
        Assert.Equal((FlagKind.AirframePartDrift, null, "gasket"), (flag.Kind, flag.Condition, flag.PartKind));
        Assert.Matches(@"^\d+ failed exhaust gaskets on ZZ-000 since about \w+ 202\d, ", flag.Statement);
        Assert.Contains("Part number and batch", string.Join('\n', flag.WhatToCheck), StringComparison.Ordinal);
    }

    [Fact] // One subject has one flag: where parts of a base fail sooner than elsewhere and, lately, than they did, it says both.
    public void A_base_that_differs_and_gets_worse_is_one_flag()
    {
        var fleet = new SimulatedFleet { Seed = 1, Welds = 0, SouthLifeFactor = 0.4 };
        var candidates = FlagCandidates.Find(new TypeGroupInputs("four", fleet.Build(), fleet.AsOf, new TrendParameters()));
        var change = FleetBuilder.Find(new ChangeAnalysis(), ChangingFleet.GasketsOfOneGetWorse())[0] with
        {
            Registration = null,
            Base = "south",
            Kind = "gasket",
            Condition = null,
            Tier = FlagTier.Watch,
        };
        var flag = Assert.Single(ProposedFlags.Propose(
            [candidates with { Changes = [change] }], new TrendParameters(),
            new Dictionary<string, LocationKind>(StringComparer.Ordinal) { ["gasket"] = ShippedKinds.Get("gasket") }, []));
        Assert.Equal(("base-part-life/four/south/gasket", FlagTier.Flag), (flag.Subject, flag.Tier));
        Assert.Matches(@"fail sooner at south: .* failed exhaust gaskets on aircraft of four at south since about ", flag.Statement);
        Assert.Same(change, flag.Change);
    }

    [Fact] // Kept in the database as JSON by earlier versions.
    public void A_flag_stored_before_places_were_tested_can_be_read()
    {
        const string stored = """
            {"subject":"repeat-location/ZZ-1/exhaust/a/Crack","kind":"RepeatLocation","registration":"ZZ-1","base":"north","typeGroup":"four",
            "condition":"Crack","locations":["exhaust/a"],"ratio":{"value":3,"lower":0.5,"upper":9,"confidence":0.95,"unit":"","events":3,
            "exposureHours":1000,"method":"m"},"observed":3,"expected":1,"statement":"s","whatToCheck":[]}
            """;
        var flag = System.Text.Json.JsonSerializer.Deserialize<ProposedFlag>(stored, TrendJson.Options)!;
        Assert.Equal((1.0, null, null, null), (flag.Expected, flag.Expectation, flag.PValue, flag.Family));
    }

    [Fact]
    public void A_base_with_short_lives_is_flagged_with_counts_and_both_medians()
    {
        var flag = Assert.Single(new SimulatedFleet { Seed = 1, Welds = 0, SouthLifeFactor = 0.4 }.Compute().Flags, f => f.Contrast is not null);
        Assert.Equal((FlagKind.BasePartLife, "base-part-life/four/south/gasket"), (flag.Kind, flag.Subject));
        Assert.Null(flag.Registration);
        Assert.Matches(@"^Exhaust gaskets of four fail sooner at south: half by \d+ h, against \d+ h elsewhere(; .* elsewhere)?\. Here \d+ failures among \d+ lives, ", flag.Statement);
        Assert.Same(flag.Contrast!.MedianRatio, flag.Ratio);
        Assert.Equal(flag.Contrast.MedianTest!.QValue, flag.QValue);
        Assert.All(["Torque practice", "Calibration", "Faces flat", "Gasket type"], w => Assert.Contains(w, string.Join('\n', flag.WhatToCheck), StringComparison.Ordinal));
    }

    // Weibull laws of equal median 743 h: shape 1 gives 8.9 % by 100 h, shape 2.9 0.2 %. Early failures are called, the medians are not. The old
    // test of medians and shapes together gave no flag here, because it asked for a median below that of the others.
    [Fact]
    public void Early_failures_are_called_where_the_medians_are_alike()
    {
        var flags = Enumerable.Range(0, 10).Select(seed => EqualMedians(seed).Flags.Where(f => f.Contrast is not null).ToList()).ToList();
        Assert.InRange(flags.Count(f => f.Count == 1), 7, 10); // some 0.9 of fleets of ten aircraft a base: COVERAGE.md
        var flag = flags.First(f => f.Count == 1)[0];
        Assert.Equal("south", flag.Base);
        Assert.Equal((ContrastFinding.NoneShown, ContrastFinding.Worse), (flag.Contrast!.Median, flag.Contrast.Early));
        Assert.Same(flag.Contrast.EarlyRatio, flag.Ratio);
        Assert.Equal(flag.Contrast.EarlyTest!.QValue, flag.QValue);
        Assert.Matches(@"^Exhaust gaskets of four fail early more often at south: \d+(\.\d)? % within 100 h, against (\d\.\d+ %|under 0\.01 %|none) elsewhere\. ", flag.Statement);
    }

    [Fact] // One gasket in ten fitted badly: those fail early, and the rest last as long as elsewhere. Simulated, fixed seeds.
    public void Badly_fitted_gaskets_are_called_early_and_leave_the_median_alone()
    {
        var contrasts = Enumerable.Range(0, 20)
            .Select(seed => new SimulatedFleet { Seed = seed, Welds = 0, GasketShape = 3, Jitter = 20, SouthBadlyFitted = 0.1 }.Compute())
            .Select(s => s.PartLives.Single(t => t.Base == "south").Contrast!).ToList();
        Assert.InRange(contrasts.Count(c => c.Early == ContrastFinding.Worse), 15, 20);
        Assert.InRange(contrasts.Count(c => c.Median is ContrastFinding.Worse or ContrastFinding.Better), 0, 2);
    }

    [Fact] // By construction: failures spread evenly over 100 to 1,000 h at one base, all within 480 to 570 h at the other, nothing before 100 h.
    public void Another_shape_with_a_like_median_is_no_short_life()
    {
        var fleet = Enumerable.Range(0, 6).Select(i => new FleetBuilder($"ZZ-{i}", i < 3 ? "north" : "south")).ToArray();
        for (var k = 0; k < 30; k++)
        {
            fleet[k % 3].Life("exhaust/cyl-1/gasket", "gasket", 100 + (30 * k), 130 + (30 * k));
            fleet[3 + (k % 3)].Life("exhaust/cyl-1/gasket", "gasket", 480 + (3 * k), 483 + (3 * k));
        }
        var snapshot = Compute([.. fleet.Select(f => f.Build())]);
        Assert.All(snapshot.PartLives.Where(t => t.Base is not null), t => Assert.Equal(ContrastFinding.NoneShown, t.Contrast!.Median));
        Assert.DoesNotContain(snapshot.Flags, f => f.Contrast is not null);
    }

    private static TrendSnapshot EqualMedians(int seed)
    {
        var south = new SimulatedFleet { Seed = seed, Welds = 0, Jitter = 20, Gaskets = 6, GasketShape = 1, GasketScale = 743 / Math.Log(2) }.Build();
        var north = new SimulatedFleet
        {
            Seed = seed
            + 1000,
            Welds = 0,
            Jitter = 20,
            Gaskets = 6,
            GasketShape = 2.9,
            GasketScale = 743 / Math.Pow(Math.Log(2), 1 / 2.9)
        }.Build();
        return FleetBuilder.Compute(
            [.. south.Where(a => a.Base == "south"), .. north.Where(a => a.Base == "north")], new TrendParameters(), FleetBuilder.AsOf, "test");
    }

    [Fact] // What has left the fleet can no longer be looked at.
    public void A_retired_aircraft_is_not_flagged_but_stays_in_the_norm()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        fleet[0] = fleet[0] with { RetiredDate = new DateOnly(2025, 12, 1) };
        var snapshot = Compute(fleet);
        Assert.DoesNotContain(snapshot.Flags, f => f.Registration == "ZZ-000");
        Assert.Equal(fleet[0].Events.Count, snapshot.Levels.Single(l => l is { Registration: "ZZ-000", Condition: Records.Findings.Condition.Crack }).Found);
    }

    [Fact] // What it had with the exhaust of then; with another since, there is nothing of it to look at.
    public void An_aircraft_is_not_flagged_for_the_group_that_it_has_left()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        fleet[0] = fleet[0] with { TypeGroup = "six" };
        Assert.DoesNotContain(Compute(fleet).Flags, f => f.Registration == "ZZ-000");
    }

    private static ProposedFlag Flag(AircraftObservations[] fleet, string subject) => Compute(fleet).Flags.Single(f => f.Subject == subject);

    private static TrendSnapshot Compute(AircraftObservations[] fleet) => FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test");
}
