using FleetTrend.Observations;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Flags;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Trends.Tests;

/// <summary>What came until a flag was closed does not raise it again; what comes after does.</summary>
public sealed class FlagClosingTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";
    private const string Hanger = "exhaust/hanger";
    private const string Drift = "airframe-drift/ZZ-00/Crack";
    private const string Place = $"repeat-location/ZZ-00/{Weld}/Crack";

    // Ten aircraft of 1,000 h: nine cracks on ZZ-00 at 100 to 900 h, one on each other. An hour is a day here. Closed on the day of
    // 800 h: one crack is left, in 200 h, and nine in 9,000 h of the others: 1 - (45/46)^10 = 0.197. The ordinary next event is no call.
    [Fact]
    public void The_next_ordinary_event_after_a_closing_raises_nothing()
    {
        Assert.Equal([Drift], Subjects(Compute(Cracking())));
        Assert.Empty(Compute(Cracking(), (Drift, 800)).Flags);
    }

    // The same, closed on the day of 500 h: cracks at 600, 700, 800, 900 h are left, in 500 h, against nine in 9,000 h; that at 500 h was
    // found on the day itself and is settled. 0.5 are expected; of 13 cracks each is on ZZ-00 with chance 500/9,500 = 1/19, and four or
    // more are with P = 0.0037 by the binomial tail; ten aircraft are ten tests.
    [Fact]
    public void A_new_series_raises_it_again_and_counts_only_what_came_after_the_day_of_closing()
    {
        var snapshot = Compute(Cracking(), (Drift, 500));
        var flag = Assert.Single(snapshot.Flags);
        Assert.Equal((Drift, 4, Day(500)), (flag.Subject, flag.Observed, flag.CountedAfterDate));
        Assert.Equal(0.5, flag.Expected!.Value, 12);
        Assert.Equal(8, flag.Ratio.Value!.Value, 12);
        Assert.Equal(500.0, flag.Ratio.ExposureHours);
        var p = Enumerable.Range(4, 10).Sum(k => Choose(13, k) * Math.Pow(1 / 19.0, k) * Math.Pow(18 / 19.0, 13 - k));
        Assert.Equal(p, (double)flag.PValue!, 12);
        Assert.Equal(10 * p, flag.QValue!.Value, 12);
        Assert.Equal((4, 500.0), (flag.Drivers![0].Observed, flag.Drivers[0].ExposureHours));
        Assert.Equal(Day(600), flag.SinceDate);
        Assert.Contains("Counted is what came after 15 May 2025, when this was last dealt with.", flag.Statement, StringComparison.Ordinal);
        // The standing is the level, year in, year out: it keeps the whole past.
        Assert.Equal(9, snapshot.Standings.Single(s => s.Registration == "ZZ-00").Observed);
    }

    [Fact] // On the day of 600 h the crack at 600 h is settled with it; the day before it is not.
    public void An_event_of_the_day_of_closing_is_before_it_and_one_of_the_day_after_is_not()
    {
        Assert.Equal(3, Flag(600).Observed);
        Assert.Equal((4, 401.0), (Flag(599).Observed, Flag(599).Ratio.ExposureHours));

        static ProposedFlag Flag(int closed) => Compute(Cracking(crackedOthers: 2), (Drift, closed)).Flags.Single();
    }

    [Fact] // Known on day 400 (400 h) and on day 1,000 (1,000 h): on day 550 it had 550 h, so that 450 of 1,000 h come after.
    public void Exposure_is_split_at_the_hours_of_the_day_of_closing_by_the_readings_around_it()
    {
        var fleet = Cracking(crackedOthers: 2).Select(f => f.Build()).ToList();
        fleet[0] = fleet[0] with { Hours = new HoursByDay([new(Day(400), Records.Hours.From(400)), new(Day(1000), Records.Hours.From(1000))]) };
        Assert.Equal((4, 450.0), (Flagged(fleet, 550).Observed, Flagged(fleet, 550).Ratio.ExposureHours));

        // Twice as fast before day 400, half as fast after: on day 550 it had 700 h by the line from (400, 600 h) to (1,000, 1,000 h).
        fleet[0] = fleet[0] with { Hours = new HoursByDay([new(Day(400), Records.Hours.From(600)), new(Day(1000), Records.Hours.From(1000))]) };
        var flag = Compute(fleet, (Drift, 550));
        Assert.Empty(flag.Flags); // cracks at 800 and 900 h are left, fewer than a drift needs

        static ProposedFlag Flagged(IReadOnlyList<AircraftObservations> aircraft, int closed) => Compute(aircraft, (Drift, closed)).Flags.Single();
    }

    [Fact] // The drift names the place that stands out by itself: closed with it, that place is not raised in its stead.
    public void A_closed_drift_settles_the_places_that_it_names()
    {
        var fleet = Cracking(ActionKind.WeldRepaired);
        Assert.Equal([Place], Subjects(FleetBuilder.Compute(
            [.. fleet.Select(f => f.Build())], new TrendParameters { MinimumEventsForDrift = 10 }, FleetBuilder.AsOf, "test")));
        Assert.Empty(Compute(fleet, (Drift, 950)).Flags);
    }

    // All nine cracks were at the weld, whose flag was closed: none is left there, in 50 h. The next one, at a place where nobody had one yet,
    // is 1 in 1,000 of 10,000 h. With the nine that are settled it would be a drift of ten.
    [Fact]
    public void A_closed_place_is_settled_in_the_test_of_its_aircraft()
    {
        var fleet = Cracking();
        foreach (var aircraft in fleet)
            aircraft.Watched(Hanger, "flange-weld", 0, 1000);
        fleet[0].Found(Hanger, "flange-weld", 960);
        Assert.Equal([Drift], Subjects(Compute(fleet)));
        Assert.Empty(Compute(fleet, (Place, 950)).Flags);
    }

    [Fact]
    public void Of_several_closings_the_newest_counts_and_those_of_others_do_not()
    {
        Assert.Empty(Compute(Cracking(), (Drift, 500), (Drift, 800)).Flags);
        Assert.Empty(Compute(Cracking(), (Drift, 800), (Drift, 500)).Flags);
        Assert.Equal(9, Compute(Cracking(), ("airframe-drift/ZZ-01/Crack", 800), ("airframe-drift/ZZ-00/Wear", 800)).Flags.Single().Observed);
    }

    [Fact] // Nothing flown since: nothing to test, and no division by no hours.
    public void Closed_after_the_last_look_nothing_is_raised() => Assert.Empty(Compute(Cracking(ActionKind.WeldRepaired), (Drift, 1000), (Place, 1000)).Flags);

    [Fact] // Parts that went in before the torque wrench was calibrated go on failing early: they do not raise the flag again.
    public void A_closed_base_counts_parts_that_went_in_after_it()
    {
        var fleet = new SimulatedFleet { Seed = 1, Welds = 0, SouthLifeFactor = 0.4 }.Build();
        var subject = Assert.Single(Compute(fleet).Flags).Subject;
        Assert.Equal("base-part-life/four/south/gasket", subject);
        Assert.Empty(Compute(fleet, (subject, 100_000)).Flags);

        // The same parts, of which those at the one base went in on day 10 and were closed on day 10, or on the day before.
        List<AircraftObservations> later = [.. fleet.Select(a => a with { Lives = [.. a.Lives.Select(l => l with { StartDate = Day(10) })] })];
        Assert.Empty(Compute(later, (subject, 10)).Flags);
        var flag = Assert.Single(Compute(later, (subject, 9)).Flags);
        Assert.Equal((subject, Day(9)), (flag.Subject, flag.CountedAfterDate));
        Assert.Contains("parts that went in after 10 Jan 2024", flag.Statement, StringComparison.Ordinal);
    }

    private static FleetBuilder[] Cracking(ActionKind? action = null, int crackedOthers = 9) =>
        [.. Enumerable.Range(0, 10).Select(i =>
        {
            var aircraft = new FleetBuilder($"ZZ-{i:00}").Watched(Weld, "y-weld", 0, 1000);
            for (var k = 0; k < (i == 0 ? 9 : i <= crackedOthers ? 1 : 0); k++)
                aircraft.Found(Weld, "y-weld", 100 + (k * 100), ordinal: k + 1, closedBy: action, renewed: action is null ? 105 + (k * 100) : null);
            return aircraft;
        })];

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);

    private static IEnumerable<string> Subjects(TrendSnapshot snapshot) => snapshot.Flags.Select(f => f.Subject);

    private static double Choose(int n, int k) => k == 0 ? 1 : Choose(n, k - 1) * (n - k + 1) / k;

    private static TrendSnapshot Compute(FleetBuilder[] fleet, params (string Subject, int Day)[] closings) =>
        Compute([.. fleet.Select(f => f.Build())], closings);

    private static TrendSnapshot Compute(IReadOnlyList<AircraftObservations> fleet, params (string Subject, int Day)[] closings) =>
        FleetTrends.Compute(
            new FleetObservations
            {
                AsOf = FleetBuilder.AsOf,
                Aircraft = fleet,
                FlagClosings = [.. closings.Select(c => new FlagClosing(c.Subject, new DateTimeOffset(Day(c.Day), new TimeOnly(17, 0), TimeSpan.Zero)))],
            },
            new TrendParameters(), "test");
}
