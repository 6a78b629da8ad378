using FleetTrend.Observations;
using FleetTrend.Observations.Looks;
using FleetTrend.Records;
using FleetTrend.Trends.DueLooks;

namespace FleetTrend.Trends.Tests;

/// <summary>When aircraft are due for a look, by interval and by how much they fly, and what inspections passed over.</summary>
public sealed class DueLookTests
{
    private const string Weld = "exhaust/cyl-3/flange-weld";
    private const string Gasket = "exhaust/cyl-1/gasket";
    private const string Baffle = "exhaust/muffler/baffle";
    private const string Coupling = "induction/cyl-2/coupling";
    private static readonly DateOnly Today = DateOnly.FromDateTime(FleetBuilder.AsOf.UtcDateTime);

    // By hand, at 700 h, an hour a day: the weld was looked at 50 h ago, so 50 h are left of 100; the gasket 100 h ago, so none are left, and it is not past.
    // The baffle was last looked at 200 h ago, and could not be examined at 600 and 650 h: 100 h past. Nobody ever looked at the coupling in 700 h, with
    // 400 h between looks: 300 h past, so that it was due 300 days before day 700.
    [Fact]
    public void What_is_furthest_past_its_interval_comes_first_and_says_why()
    {
        var due = Assert.Single(Find(Parameters, Passed()));
        Assert.Equal((-300, Day(400), 4, 2), (due.HoursToNext, due.DueDate, due.LocationCount, due.OverdueCount));
        Assert.Equal(7, due.HoursPerWeek!.Value, 6);
        Assert.Equal([Coupling, Baffle, Gasket, Weld], due.Groups.Select(g => Assert.Single(g.Locations)));
        Assert.Equal([-300, -100, 0, 50], due.Groups.Select(g => g.HoursToNext));
        Assert.Equal([true, true, false, false], due.Groups.Select(g => g.IsOverdue));
        Assert.Equal([DueReason.NotMentioned, DueReason.CouldNotExamine, DueReason.NotMentioned, DueReason.NoInspection], due.Groups.Select(g => g.Reason));
        Assert.Equal([3, 2, 1, 0], due.Groups.Select(g => g.PassedOverCount));
        Assert.Equal(
            [
                "left out by 3 inspections, the newest of 12 Oct 2025", "could not be examined on 12 Oct 2025, 2 times since the last look",
                "left out by the inspection of 12 Oct 2025", "no inspection since 12 Oct 2025",
            ],
            due.Groups.Select(DueLookWords.Why));
        Assert.Equal(
            "ZZ-A00: 2 of 4 locations past the look interval, by up to 300 h: induction cyl 2 coupling; left out by 3 inspections, the newest of 12 Oct 2025",
            DueLookWords.Statement(due));
        Assert.Equal(2, due.Evidence.Count); // the last look at the baffle, and the inspection that could not
    }

    [Fact] // Two with hours left, 10 h at 1 h a day and 8 h of one that has flown nothing in 13 weeks, and one past.
    public void What_is_past_comes_first_then_by_day()
    {
        var idle = One("ZZ-A02", 608).Build(latest: new(Day(700), Hours.From(700))) with
        {
            Hours = new HoursByDay([new(Day(0), Hours.Zero), new(Day(608), Hours.From(608)), new(Day(609), Hours.From(700)), new(Day(700), Hours.From(700))]),
        };
        var due = Find(new TrendParameters(), One("ZZ-A01", 610).Build(latest: At(700)), idle, One("ZZ-A03", 590).Build(latest: At(700)));
        Assert.Equal(["ZZ-A03", "ZZ-A01", "ZZ-A02"], due.Select(d => d.Registration));
        Assert.Equal([-10, 10, 8], due.Select(d => d.HoursToNext));
        Assert.Equal([Day(690), Day(710), null], due.Select(d => d.DueDate));
        Assert.Equal("ZZ-A01: next look in 10 h, about 11 Dec 2025", DueLookWords.Statement(due[1]));
    }

    [Fact] // Both at 700 h: ZZ-A01 is 50 h past and flies 1 h a day, so that it was due 50 days ago; ZZ-A02 is 10 h past, at a tenth of that, 100 days ago.
    public void Of_what_is_past_the_hours_count_and_not_the_days()
    {
        var slow = One("ZZ-A02", 590).Build(latest: At(700)) with
        {
            Hours = new HoursByDay([new(Day(0), Hours.Zero), new(Day(590), Hours.From(590)), new(Day(591), Hours.From(690)), new(Day(700), Hours.From(700))]),
        };
        var due = Find(new TrendParameters(), slow, One("ZZ-A01", 550).Build(latest: At(700)));
        Assert.Equal([("ZZ-A01", -50.0), ("ZZ-A02", -10)], due.Select(d => (d.Registration, d.HoursToNext!.Value)));
        Assert.True(due[1].DueDate < due[0].DueDate);
    }

    [Fact] // The latest hours say how far it has flown; an inspection that examined everything starts the interval again.
    public void Alike_locations_stand_together_the_first_few_by_name()
    {
        var builder = new FleetBuilder("ZZ-A00").Visited(600);
        for (var i = 10; i < 30; i++)
            builder.LookedAt($"exhaust/weld-{i}", "flange-weld", 600);
        var group = Assert.Single(Assert.Single(Find(new TrendParameters(), builder.Build(latest: At(640)))).Groups);
        Assert.Equal((20, 12, 60), (group.Count, group.Locations.Count, group.HoursToNext));
        Assert.Equal("weld 10, weld 11 and 18 more", DueLookWords.Names(group, 2));
        Assert.Equal("weld 10, weld 11, weld 12, weld 13, weld 14, weld 15, weld 16, weld 17, weld 18, weld 19, weld 20, weld 21 and 8 more", DueLookWords.Names(group, 40));
    }

    // By hand: a year before, 100 h in 13 weeks and 50 h in the 13 weeks after: half. Now 91 h in 13 weeks, which is 7 h a week, so 3.5 h a week to come.
    [Theory]
    [InlineData(50, 0.5, 3.5)]
    [InlineData(400, 3, 21)] // four times as much is taken for three
    public void Season_scales_the_pace_where_the_year_before_is_known(double after, double season, double perWeek)
    {
        var due = Assert.Single(Find(new TrendParameters(), Flown((-455, 0), (-364, 100), (-273, 100 + after), (-91, 900), (0, 991))));
        Assert.Equal(season, due.Season);
        Assert.Equal(perWeek, due.HoursPerWeek!.Value, 6);
    }

    [Fact] // 91 h in the last 13 weeks, and 400 days of records are no 65 weeks.
    public void Without_a_year_before_the_last_weeks_count() =>
        Assert.Equal((7, null), (Find(new TrendParameters(), Flown((-400, 0), (-91, 300), (0, 391)))[0] is var due ? (due.HoursPerWeek, due.Season) : default));

    [Fact] // 40 h in 40 days known, and nothing to be said of 20 days.
    public void A_new_aircraft_has_a_pace_after_four_weeks()
    {
        Assert.Equal(7, Find(new TrendParameters(), Flown((-40, 0), (0, 40)))[0].HoursPerWeek!.Value, 6);
        var newest = Find(new TrendParameters(), Flown((-20, 0), (0, 20)))[0];
        Assert.Equal((null, null), (newest.HoursPerWeek, newest.DueDate));
        Assert.Equal(80, newest.HoursToNext);
    }

    [Fact]
    public void Without_hours_nothing_is_said_of_them()
    {
        var due = Assert.Single(Find(new TrendParameters(), new FleetBuilder("ZZ-A00").LookedAt(Weld, "flange-weld", null).Build()));
        Assert.Equal((null, 0, DueReason.NoInspection), (due.HoursToNext, due.OverdueCount, due.Groups[0].Reason));
        Assert.Equal("ZZ-A00: no hours on record, so nothing can be said", DueLookWords.Statement(due));
        Assert.Equal("no inspection on record", DueLookWords.Why(due.Groups[0]));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Every_aircraft_that_flies_has_a_line(int aircraft)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i => One($"ZZ-A0{i}", 600 + i).Build(latest: At(650)))
            .Append(One("ZZ-R", 300).Build(retired: Day(400), latest: At(400)));
        Assert.Equal(aircraft, Find(new TrendParameters(), [.. fleet]).Count);
    }

    private static TrendParameters Parameters => new() { LookIntervals = [new LookInterval(null, "coupling", 400)] };

    private static AircraftObservations Passed() => new FleetBuilder("ZZ-A00").Visited(500, 600, 650)
        .LookedAt(Weld, "flange-weld", 650)
        .LookedAt(Gasket, "gasket", 600)
        .LookedAt(Baffle, "muffler-baffle", 500, new PassedOver(Day(650), IsPossible: false, 2, [new("test", "650 h", 1)]))
        .LookedAt(Coupling, "coupling", null)
        .Build(latest: At(700));

    private static FleetBuilder One(string registration, double last) => new FleetBuilder(registration).Visited(last).LookedAt(Weld, "flange-weld", last);

    /// <summary>An aircraft with these hours on these days from today on, looked at on the first of them.</summary>
    private static AircraftObservations Flown(params (int Day, double Hours)[] known)
    {
        HoursOnDate[] days = [.. known.Select(k => new HoursOnDate(Today.AddDays(k.Day), Hours.From(k.Hours)))];
        return new FleetBuilder("ZZ-A00").LookedAt(Weld, "flange-weld", null).Build(latest: days[^1]) with { Hours = new HoursByDay(days) };
    }

    private static List<DueLook> Find(TrendParameters parameters, params AircraftObservations[] aircraft) =>
        [.. Analyses.DueLooks.Order(FleetBuilder.Find(Analyses.DueLooks, new TypeGroupInputs("four", aircraft, FleetBuilder.AsOf, parameters)))];

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);

    private static HoursOnDate At(double hours) => new(Day((int)hours), Hours.From(hours));
}
