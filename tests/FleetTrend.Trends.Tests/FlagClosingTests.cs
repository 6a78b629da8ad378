using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Trends.Expectations;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Tests;

/// <summary>What came until a flag was closed does not raise it again; what comes after does. An hour is a day here.</summary>
public sealed class FlagClosingTests
{
    private const string Drift = "airframe-drift/ZZ-000/Crack";
    private const string Weld = "exhaust/cyl-1/flange-weld";

    [Fact] // It began on day 530: closed on day 690, one look is left, and that is no call.
    public void What_came_until_the_closing_raises_nothing()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        Assert.Contains(Compute(fleet).Flags, f => f.Subject == Drift);
        Assert.DoesNotContain(Compute(fleet, (Drift, 690)).Flags, f => f.Subject == Drift);
    }

    // Closed on day 250, before it began on day 530: raised again, and only what came after day 250 is counted, before and since.
    [Fact]
    public void What_gets_worse_after_the_closing_raises_it_again_and_counts_only_what_came_after()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        var flag = Compute(fleet, (Drift, 250)).Flags.Single(f => f.Subject == Drift);
        Assert.Equal(Day(250), flag.CountedAfterDate);
        Assert.Equal(fleet[0].Events.Count(e => e.FoundDate > Day(250)), flag.Observed + flag.Change!.FoundBefore);
        Assert.NotEqual(fleet[0].Events.Count, flag.Observed + flag.Change.FoundBefore); // there was something before it
        Assert.Contains("Counted is what came after 7 Sep 2024, when this was last dealt with.", flag.Statement, StringComparison.Ordinal);
    }

    [Fact] // The level is how it runs year in, year out: it keeps the whole past.
    public void Levels_keep_the_whole_past()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        var level = FleetBuilder.Find(Analyses.Levels, Inputs(fleet, (Drift, 690))).Single(l => l.Registration == "ZZ-000" && l.Condition == Condition.Crack);
        Assert.Equal(fleet[0].Events.Count, level.Found);
    }

    // One location, watched from day 0 to 1,000 at three looks a thousand hours: those end on days 333.4, 666.7 and 1,000. Closed on day 500: of the
    // second look 166.7 of 333.3 h came after, and the third whole.
    [Fact]
    public void A_look_that_holds_the_day_counts_by_its_hours_after()
    {
        AircraftObservations[] fleet = [new FleetBuilder("ZZ-000").Watched(Weld, "flange-weld", 0, 1000, looks: 4).Build()];
        var inputs = Inputs(fleet, (Drift, 500));
        var looks = inputs.RateLooks.Find(Condition.Crack, _ => true).ToList();
        Assert.Equal([333.3, 333.3, 333.4], looks.Select(l => l.Exposure), new Tolerance(0.11));
        var left = Restarted(inputs, looks);
        Assert.Equal([166.7, 333.4], left.Select(l => l.Exposure), new Tolerance(0.7)); // days are whole
    }

    private static List<WatchedLook> Restarted(TypeGroupInputs inputs, IEnumerable<WatchedLook> looks)
    {
        var restarted = new RestartedLooks(inputs);
        return [.. looks.Select(l => restarted.OfAircraft(new ConditionClass(Condition.Crack, null), l)).OfType<WatchedLook>()];
    }

    [Fact] // Twice as fast before day 400 as after: a look from day 0 to day 1,000 closed on day 700 has 1,100 h, of which 150 after.
    public void Hours_after_the_day_are_those_flown()
    {
        var hours = new HoursByDay([new(Day(0), Records.Hours.Zero), new(Day(400), Records.Hours.From(800)), new(Day(1000), Records.Hours.From(1100))]);
        var look = new WatchedLook("ZZ-000", "north", Weld, Day(1000), 1100, 0, Day(0), null);
        Assert.Equal(150 / 1100.0, ShareAfter.Of(look, Day(700), hours), 12);
        Assert.Equal((0, 1), (ShareAfter.Of(look, Day(1000), hours), ShareAfter.Of(look, Day(0), hours)));
    }

    [Fact] // A flag of an earlier version was about one location: what it settled stays settled.
    public void A_location_closed_in_an_earlier_version_counts_from_then()
    {
        AircraftObservations[] fleet = [new FleetBuilder("ZZ-000").Watched(Weld, "flange-weld", 0, 1000).Watched("exhaust/cyl-2/flange-weld", "flange-weld", 0, 1000).Build()];
        var inputs = Inputs(fleet, (FlagSubjects.Repeat("ZZ-000", Weld, Condition.Crack), 500));
        var left = Restarted(inputs, inputs.RateLooks.Find(Condition.Crack, _ => true))
            .ToDictionary(l => l.Location, l => l.Exposure, StringComparer.Ordinal);
        Assert.Equal((500, 1000), (left[Weld], left["exhaust/cyl-2/flange-weld"]));
    }

    [Fact]
    public void Of_several_closings_the_newest_counts_and_those_of_others_do_not()
    {
        var fleet = ChangingFleet.OneGetsWorse();
        Assert.DoesNotContain(Compute(fleet, (Drift, 250), (Drift, 690)).Flags, f => f.Subject == Drift);
        Assert.DoesNotContain(Compute(fleet, (Drift, 690), (Drift, 250)).Flags, f => f.Subject == Drift);
        var flag = Compute(fleet, ("airframe-drift/ZZ-001/Crack", 690), ("airframe-drift/ZZ-000/Wear", 690)).Flags.Single(f => f.Subject == Drift);
        Assert.Equal((null, fleet[0].Events.Count), (flag.CountedAfterDate, flag.Observed + flag.Change!.FoundBefore));
    }

    [Fact] // Nothing flown since: nothing to score, and no division by no hours.
    public void Closed_after_the_last_look_nothing_is_raised() =>
        Assert.DoesNotContain(Compute(ChangingFleet.OneGetsWorse(), (Drift, 700)).Flags, f => f.Subject == Drift);

    [Fact] // Parts of one aircraft and looks of one base start again by their own subjects.
    public void Parts_of_an_aircraft_and_conditions_of_a_base_start_again_by_their_own_flags()
    {
        var gaskets = ChangingFleet.GasketsOfOneGetWorse();
        Assert.Contains(Compute(gaskets).Flags, f => f.Subject == "airframe-part-drift/ZZ-000/gasket");
        Assert.DoesNotContain(
            Compute(gaskets, ("airframe-part-drift/ZZ-000/gasket", 700)).Flags, f => f.Subject == "airframe-part-drift/ZZ-000/gasket");
        var south = ChangingFleet.Build(3, (aircraft, _, hours) => aircraft % 2 == 1 && hours > 530 ? 4 : 1);
        Assert.Contains(Compute(south).Flags, f => f.Subject == "base-drift/four/south/Crack");
        Assert.DoesNotContain(Compute(south, ("base-drift/four/south/Crack", 690)).Flags, f => f.Subject == "base-drift/four/south/Crack");
    }

    [Fact] // Parts that went in before the torque wrench was calibrated go on failing early: they do not raise the flag again.
    public void A_closed_base_counts_parts_that_went_in_after_it()
    {
        var fleet = new SimulatedFleet { Seed = 1, Welds = 0, SouthLifeFactor = 0.4 }.Build();
        var subject = Assert.Single(Flags(fleet)).Subject;
        Assert.Equal("base-part-life/four/south/gasket", subject);
        Assert.Empty(Flags(fleet, (subject, 100_000)));

        // The same parts, of which those at the one base went in on day 10 and were closed on day 10, or on the day before.
        List<AircraftObservations> later = [.. fleet.Select(a => a with { Lives = [.. a.Lives.Select(l => l with { StartDate = Day(10) })] })];
        Assert.Empty(Flags(later, (subject, 10)));
        var flag = Assert.Single(Flags(later, (subject, 9)));
        Assert.Equal((subject, Day(9)), (flag.Subject, flag.CountedAfterDate));
        Assert.Contains("parts that went in after 10 Jan 2024", flag.Statement, StringComparison.Ordinal);
    }

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);

    private static IReadOnlyList<FlagClosing> Closings(params (string Subject, int Day)[] closings) =>
        [.. closings.Select(c => new FlagClosing(c.Subject, new DateTimeOffset(Day(c.Day), new TimeOnly(17, 0), TimeSpan.Zero)))];

    private static TypeGroupInputs Inputs(IReadOnlyList<AircraftObservations> fleet, params (string Subject, int Day)[] closings) =>
        new("four", fleet, FleetBuilder.AsOf, new TrendParameters()) { FlagClosings = Closings(closings) };

    /// <summary>Flags of bases beside the others.</summary>
    private static IEnumerable<ProposedFlag> Flags(IReadOnlyList<AircraftObservations> fleet, params (string Subject, int Day)[] closings) =>
        Compute(fleet, closings).Flags.Where(f => f.Contrast is not null);

    private static TrendSnapshot Compute(IReadOnlyList<AircraftObservations> fleet, params (string Subject, int Day)[] closings) =>
        FleetTrends.Compute(
            new FleetObservations { AsOf = FleetBuilder.AsOf, Aircraft = fleet, FlagClosings = Closings(closings) }, new TrendParameters(), "test");

    private sealed class Tolerance(double most) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= most;

        public int GetHashCode(double obj) => 0;
    }
}
