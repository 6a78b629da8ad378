using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Looks;

/// <summary>Which locations of the present layout were looked at, and when something was examined at all.</summary>
public sealed class LocationLooksTests
{
    [Fact] // The layout of "four" has four locations; the coupling is marked not examined, the other gasket has no line, a finding alone is a look.
    public void Every_location_of_the_layout_has_a_row_with_its_last_look()
    {
        var seen = new InventedAircraft().Good(10, 50, Weld, Gasket).Good(20, 100, Weld).NotExamined(20, 100, Coupling)
            .Found(30, 150, Gasket, Condition.LeakTrace).Observe();
        Assert.Equal(
            [(OtherGasket, 0, null), (Weld, 2, Day(20)), (Gasket, 2, Day(30)), (Coupling, 0, (DateOnly?)null)],
            seen.Looks.Select(l => (l.Location, l.LookCount, l.LastDate)));
        Assert.Equal([0, 1, 1, 0], seen.Looks.Select(l => l.Evidence.Count));
    }

    [Fact] // Two cards of one day are one visit; the card that examined nothing is none.
    public void A_visit_is_a_day_on_which_something_was_examined()
    {
        var seen = new InventedAircraft().Good(10, 50, Weld).Examined("sheets", 10, 50, Gasket).NotExamined(20, 100, Weld).Good(30, 150, Weld).Observe();
        Assert.Equal([(Day(10), 50.0, 2), (Day(30), 150.0, 1)], seen.Visits.Select(v => (v.Date, v.Hours.Value, v.Evidence.Count)));
    }

    [Fact]
    public void Looks_before_the_records_are_complete_do_not_count()
    {
        var seen = new InventedAircraft(watchFrom: 15).Good(10, 50, Weld, Gasket).Good(20, 100, Weld).Observe();
        Assert.Equal([(Weld, 1), (Gasket, 0)], seen.Looks.Where(l => l.Location is Weld or Gasket).Select(l => (l.Location, l.LookCount)));
        Assert.Equal(Day(20), Assert.Single(seen.Visits).Date);
    }

    [Fact] // "bare" lacks the coupling; a change of base alone begins nothing anew.
    public void Looks_count_since_the_aircraft_came_into_its_present_type_group()
    {
        var seen = new InventedAircraft(described: false)
            .Described("cards", 0, null, (0, "north", "four"), (40, "north", "bare"), (60, "south", "bare"))
            .Good(20, 100, Weld, Coupling).Good(50, 250, Weld).Good(70, 350, Weld).Observe();
        Assert.Equal([OtherGasket, Weld, Gasket], seen.Looks.Select(l => l.Location));
        Assert.Equal(2, seen.Looks.Single(l => l.Location == Weld).LookCount);
        Assert.Equal([Day(50), Day(70)], seen.Visits.Select(v => v.Date));
    }

    // The weld was passed over before its last look only. The gasket was marked on two days since its last, on the newer day by two cards, one of which
    // says that it could not be examined. The coupling was never looked at, and marked once. Nothing was said of the other gasket.
    [Fact]
    public void What_inspections_passed_over_since_the_last_look_is_kept_with_why()
    {
        var seen = new InventedAircraft().NotExamined(5, 25, Weld, Gasket).Good(10, 50, Weld, Gasket).NotExamined(20, 100, Gasket)
            .Inspected(30, 150, LookState.CouldNotExamine, Gasket).NotExamined(30, 150, Gasket).NotExamined(30, 150, Coupling).Observe();
        var passedOver = seen.Looks.ToDictionary(l => l.Location, l => l.PassedOver);
        Assert.Equal((Day(30), false, 2, 2), (passedOver[Gasket]!.Date, passedOver[Gasket]!.IsPossible,
            passedOver[Gasket]!.Count, passedOver[Gasket]!.Evidence.Count));
        Assert.Equal((Day(30), true, 1), (passedOver[Coupling]!.Date, passedOver[Coupling]!.IsPossible, passedOver[Coupling]!.Count));
        Assert.Equal((null, null), (passedOver[Weld], passedOver[OtherGasket]));
    }
}
