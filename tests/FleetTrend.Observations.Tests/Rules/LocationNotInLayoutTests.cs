using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 7, and records outside an aircraft's time.</summary>
public sealed class LocationNotInLayoutTests
{
    private const string Unknown = "exhaust/cyl-9/flange-weld";

    [Fact]
    public void A_location_that_the_layout_does_not_have_is_listed_and_left_out()
    {
        var seen = new InventedAircraft()
            .Good(10, 100, Weld, Unknown).Found(20, 200, Unknown, Condition.Crack).Did(20, 200, Unknown, ActionKind.WeldRepaired)
            .Installed(20, 200, Unknown).Removed(30, 210, Unknown).Good(40, 300, Weld).Observe();
        Assert.Equal(5, seen.Problems.Count);
        Assert.All(seen.Problems, p => Assert.Equal(DataProblemKind.LocationNotInLayout, p.Kind));
        Assert.All(seen.Problems, p => Assert.Contains(Unknown, p.Description, StringComparison.Ordinal));
        Assert.All(seen.Problems, p => Assert.NotEmpty(p.Evidence));
        Assert.Empty(seen.Events);
        Assert.Equal(Weld, Assert.Single(seen.Exposures).Location);
    }

    [Fact] // The type group "bare" has no coupling; the aircraft belongs to it from day 30 on.
    public void The_layout_is_that_of_the_day_of_the_record()
    {
        var seen = new InventedAircraft(described: false).Described("cards", 0, null, (0, "north", "four"), (30, "north", "bare"))
            .Good(10, 100, Coupling).Good(20, 200, Coupling).Good(40, 300, Coupling).Observe();
        Assert.Equal(100, Assert.Single(seen.Exposures).Duration.Value);
        Assert.Equal(Day(40), Assert.Single(seen.Problems).Date);
    }

    [Fact]
    public void A_type_group_without_a_layout_has_no_locations()
    {
        var seen = new InventedAircraft(described: false).Described("cards", 0, null, (0, "north", "unheard-of")).Good(10, 100, Weld).Observe();
        Assert.Equal(DataProblemKind.LocationNotInLayout, Assert.Single(seen.Problems).Kind);
    }

    [Fact]
    public void Records_after_the_as_of_day_are_listed_and_left_out()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld).Good(40, 200, Weld).Good(90, 300, Weld)
            .Found(91, 301, Weld, Condition.Crack).Read(92, 310).Observe(asOf: 60);
        Assert.Equal(3, seen.Problems.Count(p => p.Kind == DataProblemKind.InTheFuture));
        Assert.Equal(100, Assert.Single(seen.Exposures).Duration.Value);
        Assert.Empty(seen.Events);
        Assert.Equal(200, seen.Latest!.Hours.Value);
        Assert.Equal(Day(40), seen.LatestInspection!.Date);
    }

    [Fact]
    public void Records_after_the_aircraft_left_the_fleet_are_listed_and_left_out()
    {
        var aircraft = new InventedAircraft(retired: 60).Good(10, 100, Weld).Good(40, 200, Weld).Found(91, 301, Weld, Condition.Crack);
        var seen = aircraft.Observe();
        Assert.Equal(DataProblemKind.AfterRetirement, Assert.Single(seen.Problems).Kind);
        Assert.Empty(seen.Events);
        Assert.Equal(Day(60), seen.RetiredDate);
        Assert.Null(aircraft.Observe(asOf: 50).RetiredDate);
    }
}
