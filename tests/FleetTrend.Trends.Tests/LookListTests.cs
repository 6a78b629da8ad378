using FleetTrend.Observations;
using FleetTrend.Observations.Looks;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.LookLists;

namespace FleetTrend.Trends.Tests;

/// <summary>What to look at when an aircraft comes in next.</summary>
public sealed class LookListTests
{
    private const string Gasket = "exhaust/cyl-1/gasket";
    private const string FlangeWeld = "exhaust/cyl-1/flange-weld";
    private const string StackWeld = "exhaust/cyl-1/stack-weld";
    private const string YWeld = "exhaust/left/y-weld";
    private const string Clamp = "exhaust/left/clamp";
    private const string Hanger = "exhaust/left/hanger";
    private const string Coupling = "induction/cyl-1/coupling";
    private const string Baffle = "exhaust/muffler/baffle";

    private static readonly Location[] Layout =
    [
        At(Gasket, "gasket"), At(FlangeWeld, "flange-weld"), At(StackWeld, "stack-weld"), At(YWeld, "y-weld"), At(Clamp, "clamp"), At(Hanger, "hanger"),
        At(Baffle, "muffler-baffle"), At(Coupling, "coupling"),
    ];

    // By hand, at 900 h, an hour a day and 100 h between looks. The gasket leaks since 860 h, deferred. The flange weld cracked for the third time at
    // 870 h, was
    // welded then, and nobody has looked since. The stack weld cracked once at 700 h, was welded, and was looked at since, 880 h. The Y weld is named by a
    // call. The clamp was last looked at at 750 h, 150 h ago, and could not be examined at 880 h. Nobody ever looked at the hanger. The coupling has a
    // chance of 0.24; the baffle of 0.09, below the 0.1 from which on a part stands out.
    [Fact]
    public void Every_location_is_listed_in_the_order_of_the_layout_and_says_why_it_stands_out()
    {
        var list = Build(Troubled(), Chances((Coupling, 0.24), (Baffle, 0.09)), YWeld);
        Assert.Equal(Layout.Select(l => l.Path), list.Lines.Select(l => l.Location));
        Assert.Equal(
            [
                [LookReason.OpenFirst], [LookReason.NotSeenSinceAction, LookReason.CameBack], [], [LookReason.Called], [LookReason.PastInterval],
                    [LookReason.NeverLookedAt],
                [], [LookReason.MayHaveFailed],
            ],
            list.Lines.Select(l => l.Reasons));
        Assert.Equal([20, 30, 20, 20, 150, null, 20, 20], list.Lines.Select(l => l.HoursSinceLook));
        Assert.All(list.Lines, l => Assert.NotEmpty(l.LookFor));
        Assert.Equal(
            [
                "Leak trace open for 40 h",
                "Welded on 20 May 2026 and not looked at since; 3 cracks here before",
                "",
                "In the call about cracks",
                "Not looked at for 150 h; not examined on 29 May 2026",
                "Never looked at",
                "",
                "24 % chance that it has failed by its next look",
            ],
            list.Lines.Select(LookListWords.Reasons));
        Assert.Equal(
            "Look first at cyl 1 gasket (leak trace open for 40 h); left y weld (in the call about cracks); left hanger (never looked at); left clamp (not looked at for "
                + "150 h; not examined on 29 May 2026); and 2 more.",
            LookListWords.Statement(list));
    }

    [Fact]
    public void What_was_found_before_comes_the_newest_first_with_what_was_done()
    {
        var list = Build(Troubled(), null);
        Assert.Equal("Crack 4.0 mm 20 May 2026, welded; crack 31 Jul 2025, welded; crack 22 Apr 2025, stop-drilled", LookListWords.Before(Line(list, FlangeWeld)));
        Assert.Equal("Crack 30 Nov 2025, welded", LookListWords.Before(Line(list, StackWeld)));
        Assert.Equal("", LookListWords.Before(Line(list, YWeld)));
        Assert.Equal([30, 323, 423], Line(list, FlangeWeld).Before.Select(b => b.HoursSinceFound));
    }

    [Fact] // Checks go with what is open or came back, and not with what was found once and closed.
    public void Checks_stand_where_a_condition_is_open_or_came_back()
    {
        var list = Build(Troubled(), null);
        Assert.Equal(ShippedKinds.Get("gasket").ChecksFor(Condition.LeakTrace) ?? [], Line(list, Gasket).Checks);
        Assert.Equal(ShippedKinds.Get("flange-weld").ChecksFor(Condition.Crack) ?? [], Line(list, FlangeWeld).Checks);
        Assert.Empty(Line(list, StackWeld).Checks);
    }

    [Fact]
    public void A_part_has_its_age_and_its_chance_where_one_is_known()
    {
        var list = Build(Troubled(), Chances((Coupling, 0.24)));
        Assert.Equal(new PartOnList(null, 640, 0.24, 0.12, 0.48), Line(list, Coupling).Part);
        Assert.Equal("640 h old; 24 % (12 % to 48 %)", LookListWords.Part(Line(list, Coupling)));
        Assert.Equal(new PartOnList(null, 300, null, null, null), Line(list, Gasket).Part);
        Assert.Equal("", LookListWords.Part(Line(list, Hanger)));
    }

    [Fact] // A look on the day of the weld is the look that found the crack; one the day after has seen the weld.
    public void A_repair_is_seen_by_a_look_after_its_day()
    {
        var welded = new FleetBuilder("ZZ-A00")
            .Found(FlangeWeld, "flange-weld", 850, closedBy: ActionKind.WeldRepaired, actions: [(ActionKind.WeldRepaired, 850)]);
        Assert.Equal([LookReason.NotSeenSinceAction], Line(Build(welded.LookedAt(FlangeWeld, "flange-weld", 850), null), FlangeWeld).Reasons);
        var seen = new FleetBuilder("ZZ-A00")
            .Found(FlangeWeld, "flange-weld", 850, closedBy: ActionKind.WeldRepaired, actions: [(ActionKind.WeldRepaired, 850)]).LookedAt(FlangeWeld, "flange-weld", 851);
        Assert.Empty(Line(Build(seen, null), FlangeWeld).Reasons);
    }

    [Fact] // At the interval itself it is due and not past.
    public void An_interval_is_past_beyond_it()
    {
        Assert.Empty(Line(Build(new FleetBuilder("ZZ-A00").LookedAt(YWeld, "y-weld", 800), null), YWeld).Reasons);
        Assert.Equal([LookReason.PastInterval], Line(Build(new FleetBuilder("ZZ-A00").LookedAt(YWeld, "y-weld", 799), null), YWeld).Reasons);
    }

    [Fact] // 0.1 is enough.
    public void A_part_stands_out_from_one_chance_in_ten_on()
    {
        var aircraft = new FleetBuilder("ZZ-A00").LookedAt(Coupling, "coupling", 880).Life(Coupling, "coupling", 600, ageNow: 640);
        Assert.Equal([LookReason.MayHaveFailed], Line(Build(aircraft, Chances((Coupling, 0.1))), Coupling).Reasons);
        Assert.Empty(Line(Build(aircraft, Chances((Coupling, 0.0999))), Coupling).Reasons);
    }

    [Fact] // What came back and was replaced since is another part.
    public void What_was_renewed_has_not_come_back()
    {
        var renewed = new FleetBuilder("ZZ-A00").LookedAt(FlangeWeld, "flange-weld", 880)
            .Found(FlangeWeld, "flange-weld", 700, ordinal: 2, closedBy: ActionKind.Replaced, renewed: 700, actions: [(ActionKind.Replaced, 700)]);
        Assert.Empty(Line(Build(renewed, null), FlangeWeld).Reasons);
    }

    [Fact]
    public void Where_nothing_stands_out_all_are_to_be_looked_at_as_always()
    {
        var quiet = new FleetBuilder("ZZ-A00");
        foreach (var location in Layout)
            quiet.LookedAt(location.Path, location.Kind.Name, 880);
        var list = Build(quiet, null);
        Assert.Equal("Nothing stands out on ZZ-A00; all 8 locations are to be looked at as always.", LookListWords.Statement(list));
        Assert.Equal(Layout.Length, list.Lines.Count);
    }

    private static FleetBuilder Troubled() => new FleetBuilder("ZZ-A00")
        .LookedAt(Gasket, "gasket", 880).Found(Gasket, "gasket", 860, Condition.LeakTrace, open: true, actions: [(ActionKind.Deferred, 860)])
        .Life(Gasket, "gasket", 280, ageNow: 300)
        .LookedAt(FlangeWeld, "flange-weld", 870)
        .Found(FlangeWeld, "flange-weld", 477, actions: [(ActionKind.StopDrilled, 477)])
        .Found(FlangeWeld, "flange-weld", 577, ordinal: 2, actions: [(ActionKind.WeldRepaired, 577)])
        .Found(FlangeWeld, "flange-weld", 870, ordinal: 3, actions: [(ActionKind.WeldRepaired, 870)], sizes: [(870, 4)])
        .LookedAt(StackWeld, "stack-weld", 880).Found(StackWeld, "stack-weld", 699, actions: [(ActionKind.WeldRepaired, 699)])
        .LookedAt(YWeld, "y-weld", 880)
        .LookedAt(Clamp, "clamp", 750, new PassedOver(Day(880 - 1), IsPossible: false, 1, [new("test", "880 h", 1)]))
        .LookedAt(Hanger, "hanger", null)
        .LookedAt(Baffle, "muffler-baffle", 880)
        .LookedAt(Coupling, "coupling", 880).Life(Coupling, "coupling", 620, ageNow: 640);

    private static LookList Build(FleetBuilder aircraft, FailureChance? chances, params string[] called) => LookList.Build(
        aircraft.Build(latest: new HoursOnDate(Day(900), Hours.From(900))), Layout, chances, called.Length == 0 ? [] : [Call(called)], new TrendParameters());

    private static ProposedFlag Call(string[] locations) => new()
    {
        Subject = "subject",
        Kind = FlagKind.AirframeDrift,
        Registration = "ZZ-A00",
        Base = "north",
        TypeGroup = "four",
        Condition = Condition.Crack,
        Locations = locations,
        Ratio = new Figure { Value = 7, Confidence = 0.95, Unit = "", Events = 7, Method = "by hand" },
        Observed = 7,
        Statement = "Cracks.",
        WhatToCheck = [],
    };

    private static LookListLine Line(LookList list, string location) => list.Lines.Single(l => l.Location == location);

    private static FailureChance Chances(params (string Location, double Chance)[] parts) => new()
    {
        Registration = "ZZ-A00",
        Base = "north",
        TypeGroup = "four",
        Parts =
        [
            .. parts.Select(p => new PartChance
            {
                Location = p.Location, Kind = "coupling", GoodHours = 620, AgeHours = 640, NextLookHours = 720, Chance = p.Chance,
                    Lower = p.Chance / 2, Upper = 2 * p.Chance,
            }),
        ],
        Expected = 0,
        Lower = 0,
        Upper = 0,
        AnyChance = 0,
        Confidence = 0.95,
        AgeUnknown = 0,
        TooFewFailures = 0,
        Evidence = [],
    };

    private static Location At(string path, string kind) => new(path, ShippedKinds.Get(kind));

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);
}
