using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 12. Cuts by hand: straight lines between the days whose hours are known.</summary>
public sealed class LikeWithLikeTests
{
    private static InventedAircraft Changing => new InventedAircraft(described: false)
        .Described("cards", 0, null, (0, "north", "four"), (40, "south", "four"), (60, "south", "bare"));

    [Fact] // 100 h on day 20, 300 h on day 60, so 200 h on day 40; the change of group on day 60 is at 300.
    public void Exposure_is_cut_where_the_aircraft_changed_base_or_type_group()
    {
        var seen = Changing.Good(20, 100, Weld).Good(60, 300, Weld).Good(100, 500, Weld).Observe();
        Assert.Equal(
            [("four", "north", 100, 200), ("four", "south", 200, 300), ("bare", "south", 300, 500)],
            seen.Exposures.Select(e => (e.TypeGroup, e.Base, (int)e.From.Value, (int)e.To.Value)));
        Assert.Equal([1, 1, 1], seen.Exposures.Select(e => e.LookCount));
        Assert.Equal("bare", seen.TypeGroup);
        Assert.Equal("south", seen.Base);
    }

    [Fact]
    public void An_event_belongs_to_the_group_and_base_in_whose_hours_it_arose()
    {
        var seen = Changing.Good(20, 100, Weld).Found(30, 150, Weld, Condition.Crack).Found(60, 300, Weld, Condition.LeakTrace).Good(100, 500, Weld).Observe();
        Assert.Equal([("four", "north"), ("four", "south")], seen.Events.Select(e => (e.TypeGroup, e.Base)));
        Assert.All(seen.Events, e => Assert.Contains(
            seen.Exposures, x => x.TypeGroup == e.TypeGroup && x.Base == e.Base && x.From < e.Found && e.Found <= x.To));
    }

    [Fact]
    public void A_life_belongs_where_it_came_under_observation()
    {
        var life = Assert.Single(Changing.Installed(1, 0, Gasket).Good(20, 100, Gasket).Good(100, 500, Gasket).Observe().Lives);
        Assert.Equal(("four", "north"), (life.TypeGroup, life.Base));
    }

    [Fact]
    public void A_location_that_the_later_group_lacks_keeps_its_earlier_exposure_and_its_parts_are_not_in_service()
    {
        var seen = Changing.Installed(1, 0, Coupling).Good(20, 100, Coupling).Good(50, 250, Coupling).Good(100, 500, Weld).Observe();
        Assert.Equal(250, seen.Exposures.Sum(e => e.Duration.Value));
        Assert.Equal(Lives.LifeEnding.RemovedGood, Assert.Single(seen.Lives).Ending);
        Assert.Equal(new Statistics.Lives.Life(250, double.PositiveInfinity, 0), seen.Lives[0].ForFit());
    }

    [Fact]
    public void Sources_that_disagree_are_listed_and_the_first_by_name_holds()
    {
        var seen = new InventedAircraft(described: false)
            .Described("sheets", 10, null, (0, "south", "four")).Described("cards", 0, null, (0, "north", "four"))
            .Good(5, 50, Weld).Good(20, 100, Weld).Good(60, 300, Weld).Observe();
        Assert.Equal("north", seen.Base);
        Assert.Equal(200, Assert.Single(seen.Exposures).Duration.Value); // complete from day 10, the later of the two
        Assert.Equal(2, seen.Problems.Count(p => p.Kind == DataProblemKind.SourcesDisagree));
    }

    [Fact]
    public void Sources_that_agree_are_no_problem() =>
        Assert.Empty(new InventedAircraft().Described("sheets", 0, null, (0, "north", "four")).Good(5, 50, Weld).Observe().Problems);
}
