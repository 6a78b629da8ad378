using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Recurrences;
using FleetTrend.Trends.Repeats;

namespace FleetTrend.Trends.Tests;

public sealed class LocationTrendsTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";
    private const string OtherWeld = "exhaust/cyl-2/y-weld";

    // By hand. ZZ-1: 800 h at Weld with 2 cracks, the second after a repair; 700 h at OtherWeld with a crack present at entry.
    // ZZ-2: 1,200 h at Weld with 1 crack. So Weld: 3 in 2,000 h, 1.5 per 1,000 h; y-welds: 3 in 2,700 h, 1.1111 per 1,000 h.
    private static TrendSnapshot Small() => Compute(
        new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 100, 900).Watched(OtherWeld, "y-weld", 200, 900)
            .Found(Weld, "y-weld", 300, closedBy: ActionKind.WeldRepaired)
            .Found(Weld, "y-weld", 500, ordinal: 2, since: ActionKind.WeldRepaired, sinceHours: 310)
            .Found(OtherWeld, "y-weld", 200, atEntry: true),
        new FleetBuilder("ZZ-2").Watched(Weld, "y-weld", 0, 1200).Found(Weld, "y-weld", 650));

    [Fact]
    public void Rate_at_a_location_is_events_over_its_watched_hours()
    {
        var rate = Small().Rates.Single(r => r.Location == Weld && r.Condition == Condition.Crack);
        Assert.Equal(1.5, rate.Rate.Value!.Value, 12);
        Assert.Equal((3, 2000.0, 2, 1), (rate.Rate.Events, rate.Rate.ExposureHours!.Value, rate.AircraftCount, rate.RepeatCount));
        // Two aircraft, 2 in 800 h and 1 in 1,200 h: beside the other 2 - 800/1,200 = 1.3333 and 1 - 2 x 1,200/800 = -2, so 5.7778 / 3² = 0.64198.
        // Student's t of 4 degrees 2.776445 (ClusteredRate): a factor exp(2.776445 x 0.801234) = 9.2496. Pearson: 0.8²/1.2 + 0.8²/1.8 = 0.8889.
        Assert.Equal(1.5 / 9.2496, rate.Rate.Lower!.Value, 4);
        Assert.Equal(1.5 * 9.2496, rate.Rate.Upper!.Value, 3);
        Assert.Equal(8 / 9.0, rate.Rate.Dispersion!.Value, 9);
    }

    [Fact]
    public void What_was_present_at_entry_is_counted_apart_and_in_no_rate()
    {
        var rate = Small().Rates.Single(r => r.Location == OtherWeld);
        Assert.Equal((0, 1), (rate.Rate.Events, rate.PresentAtEntryCount));
        Assert.Equal(0, rate.Rate.Value);
        Assert.Equal(3.6889 / 0.7, rate.Rate.Upper!.Value, 3); // no event in 700 h: 3.6889 (Garwood 1936)
    }

    [Fact]
    public void Kind_and_group_add_the_hours_of_their_locations()
    {
        var rates = Small().Rates;
        var kind = rates.Single(r => r.Kind == "y-weld" && r.Location is null);
        Assert.Equal(3 / 2.7, kind.Rate.Value!.Value, 12);
        Assert.Equal("per 1,000 location-hours", kind.Rate.Unit);
        Assert.Equal(kind.Rate, rates.Single(r => r.Kind is null).Rate);
    }

    [Fact] // By hand: a weld does not harden, so 1 in the coupling's 500 h, 2 per 1,000 h.
    public void A_group_rate_leaves_out_locations_where_the_condition_makes_no_sense()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1")
            .Watched("induction/coupling", "coupling", 0, 500).Watched(Weld, "y-weld", 0, 500)
            .Found("induction/coupling", "coupling", 400, Condition.Hardening));
        Assert.Equal(2, snapshot.Rates.Single(r => r.Kind is null && r.Condition == Condition.Hardening).Rate.Value);
    }

    [Fact]
    public void Every_weld_has_a_crack_rate_even_without_a_crack()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1")
            .Watched(Weld, "y-weld", 0, 300).Watched("exhaust/cyl-1/gasket", "gasket", 0, 300));
        Assert.Equal([Weld], snapshot.Rates.Where(r => r.Location is not null).Select(r => r.Location));
        Assert.All(snapshot.Rates, r => Assert.Equal((0, Condition.Crack), (r.Rate.Events, r.Condition)));
        Assert.Empty(snapshot.Recurrences.Single().Points);
    }

    [Fact]
    public void An_aircraft_that_changed_group_leaves_its_earlier_hours_there()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1", typeGroup: "six")
            .Watched(Weld, "y-weld", 0, 400, group: "four").Watched(Weld, "y-weld", 400, 1000)
            .Found(Weld, "y-weld", 350, group: "four"));
        Assert.Equal((1, 400.0), Counts("four"));
        Assert.Equal((0, 600.0), Counts("six"));

        (int Events, double Hours) Counts(string group)
        {
            var rate = snapshot.Rates.Single(r => r.TypeGroup == group && r.Location == Weld).Rate;
            return (rate.Events, rate.ExposureHours!.Value);
        }
    }

    [Fact] // By hand: at 300 h both are watched, 1/2; at 500 h both, 1/2; at 650 h both, 1/2.
    public void Mean_cumulative_function_by_time_in_service()
    {
        var trend = Small().Recurrences.Single(r => r.Location == Weld);
        Assert.Equal([300, 500, 650], trend.Points.Select(p => p.Hours));
        Assert.Equal([0.5, 1, 1.5], trend.Points.Select(p => p.Value));
        Assert.Equal(2, trend.AircraftCount);
    }

    [Fact] // By hand: the run of ZZ-1 has two, the second 190 h after the weld.
    public void A_crack_that_came_back_is_a_repeat()
    {
        var repeat = Small().Repeats.Single();
        Assert.Equal(("ZZ-1", Weld, 2), (repeat.Registration, repeat.Location, repeat.Events.Count));
        Assert.Equal(190, repeat.Events[1].HoursSinceAction);
        Assert.Equal(800, repeat.ExposureHours);
        Assert.Equal(2, repeat.Evidence.Count);
    }

    // One weld of ZZ-1, watched from 100 to 900 h. Listed: one at 100 h that the first look found, then 300, 500 and 700 h, so four; counted: three.
    private static TrendSnapshot OneWeld() => Compute(
        new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 100, 900)
            .Found(Weld, "y-weld", 100, atEntry: true, closedBy: ActionKind.StopDrilled, actions: [(ActionKind.StopDrilled, 100)])
            .Found(Weld, "y-weld", 300, ordinal: 2, closedBy: ActionKind.WeldRepaired, since: ActionKind.StopDrilled, sinceHours: 100,
                actions: [(ActionKind.Monitored, 300), (ActionKind.WeldRepaired, 342)])
            .Found(Weld, "y-weld", 500, ordinal: 3, since: ActionKind.WeldRepaired, sinceHours: 342)
            .Found(Weld, "y-weld", 700, ordinal: 4, open: true),
        new FleetBuilder("ZZ-2").Watched(Weld, "y-weld", 0, 400).Watched(Weld, "y-weld", 600, 1200).Found(Weld, "y-weld", 650),
        new FleetBuilder("ZZ-3").Watched(Weld, "y-weld", 0, 350));

    [Fact]
    public void Rate_level_and_history_agree_on_what_counts_and_name_the_rest()
    {
        var snapshot = OneWeld();
        var repeat = snapshot.Repeats.Single();
        Assert.Equal(
            [EventCounting.PresentAtEntry, EventCounting.Counted, EventCounting.Counted, EventCounting.Counted], repeat.Events.Select(e => e.Counting));
        Assert.Equal(3, snapshot.Levels.Single(l => l.Registration == "ZZ-1").Found);
        Assert.Equal(new RepeatOthers(2, 1, 1350), repeat.Others); // 400 + 600 + 350 h
        var rate = snapshot.Rates.Single(r => r.Location == Weld);
        Assert.Equal((4, 1, 0), (rate.Rate.Events, rate.PresentAtEntryCount, rate.NotWatchedCount)); // with the one of ZZ-2
        var contrast = snapshot.RecurrenceContrasts.Single();
        Assert.Equal((3, 1, 0), (contrast.FoundHours.Count, contrast.PresentAtEntryCount, contrast.NotWatchedCount));
    }

    [Fact]
    public void A_history_has_each_action_with_its_own_day()
    {
        var events = OneWeld().Repeats.Single().Events;
        Assert.Equal(
            [new RepeatAction(ActionKind.Monitored, FleetBuilder.Start.AddDays(300), 300),
                new RepeatAction(ActionKind.WeldRepaired, FleetBuilder.Start.AddDays(342), 342)],
            events[1].Actions!);
        Assert.Equal((ActionKind.WeldRepaired, 158.0), (events[2].SinceAction, events[2].HoursSinceAction)); // 500 - 342
        Assert.Null(events[3].ClosedDate);
    }

    [Fact] // By hand: of the two others one is watched at 650 h, so 1 there; nobody else was watched from 400 to 600 h, nor after 1,200 h.
    public void Its_like_leaves_the_aircraft_out_and_both_end_with_their_last_looks()
    {
        var contrast = OneWeld().RecurrenceContrasts.Single();
        Assert.Equal([300, 500, 700], contrast.FoundHours);
        Assert.Equal([new WatchedSpan(100, 900)], contrast.Watched);
        Assert.Equal((2, 1), (contrast.OthersCount, contrast.OthersEvents));
        Assert.Equal((650, 1, 1), (contrast.Others.Single().Hours, contrast.Others.Single().AtRisk, contrast.Others.Single().Value));
        Assert.Equal([new WatchedSpan(0, 400), new WatchedSpan(600, 1200)], contrast.OthersWatched);
        Assert.Equal([new WatchedSpan(0, 1200)], OneWeld().Recurrences.Single().Watched!); // ZZ-1 fills the gap of the whole group
    }

    [Theory]
    [InlineData(600.0, 0)]
    [InlineData(null, 1)]
    public void A_renewal_ends_the_run(double? renewed, int repeats)
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 0, 900)
            .Found(Weld, "y-weld", 300, closedBy: ActionKind.StopDrilled, renewed: renewed)
            .Found(Weld, "y-weld", 500, ordinal: 2, since: ActionKind.StopDrilled, sinceHours: 300, renewed: renewed));
        Assert.Equal(repeats, snapshot.Repeats.Count);
    }

    [Fact] // Watched since the replacement at 310 h, to 900 h.
    public void Only_events_since_the_last_renewal_are_in_the_run()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 0, 900)
            .Found(Weld, "y-weld", 300, closedBy: ActionKind.Replaced, renewed: 310)
            .Found(Weld, "y-weld", 500, closedBy: ActionKind.WeldRepaired)
            .Found(Weld, "y-weld", 700, ordinal: 2, since: ActionKind.WeldRepaired, sinceHours: 500));
        var repeat = snapshot.Repeats.Single();
        Assert.Equal([500, 700], repeat.Events.Select(e => e.FoundHours));
        Assert.Equal(590, repeat.ExposureHours);
    }

    [Fact]
    public void Two_cracks_at_one_look_are_no_repeat() =>
        Assert.Empty(Compute(new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 0, 900)
            .Found(Weld, "y-weld", 300).Found(Weld, "y-weld", 300, ordinal: 2)).Repeats);

    [Fact]
    public void An_event_in_no_watched_hours_is_counted_apart_and_gives_no_number()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1").Found(Weld, "y-weld", 300));
        var rate = snapshot.Rates.Single(r => r.Location == Weld);
        Assert.Null(rate.Rate.Value);
        Assert.Equal("not enough data: 0 events in no watched hours", rate.Rate.NotEnoughData);
        Assert.Equal(1, rate.NotWatchedCount);
        Assert.Empty(snapshot.Recurrences);
        Assert.Empty(snapshot.Levels);
    }

    [Fact] // By hand: 300 h watched once, though two sources cut it differently; the event at its start is in none of them.
    public void No_hour_counts_twice_and_no_event_without_its_hour()
    {
        var snapshot = Compute(new FleetBuilder("ZZ-1").Watched(Weld, "y-weld", 100, 300).Watched(Weld, "y-weld", 200, 400)
            .Found(Weld, "y-weld", 100).Found(Weld, "y-weld", 250, ordinal: 2));
        var rate = snapshot.Rates.Single(r => r.Location == Weld);
        Assert.Equal((1, 300.0, 0, 1), (rate.Rate.Events, rate.Rate.ExposureHours, rate.PresentAtEntryCount, rate.NotWatchedCount));
        Assert.Equal(250, Assert.Single(snapshot.Recurrences.Single().Points).Hours);
    }

    private static TrendSnapshot Compute(params FleetBuilder[] fleet) =>
        FleetBuilder.Compute([.. fleet.Select(f => f.Build())], new TrendParameters(), FleetBuilder.AsOf, "test");
}
