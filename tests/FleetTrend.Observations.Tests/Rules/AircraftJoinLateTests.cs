using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 3. Ages are hours of the look less hours of the installation, written in the test.</summary>
public sealed class AircraftJoinLateTests
{
    [Fact] // Put in at 200 before records begin, first seen good at 650: it enters at age 450.
    public void A_life_first_seen_late_is_truncated_at_that_age()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(-300, 200, Gasket).Good(10, 650, Gasket).Good(50, 750, Gasket).Found(90, 850, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(550, 650, 450), life.ForFit());
        Assert.Equal(Day(10), life.StartDate);
    }

    [Fact]
    public void A_good_look_before_the_watch_is_no_entry()
    {
        var life = Assert.Single(new InventedAircraft().Installed(-300, 200, Gasket).Good(-10, 600, Gasket).Good(10, 650, Gasket).Observe().Lives);
        Assert.Equal(450, life.Entry.Value);
    }

    [Fact]
    public void Watched_from_new_it_enters_at_zero_and_watched_from_used_at_its_age()
    {
        Assert.Equal(0, Assert.Single(new InventedAircraft().Installed(1, 500, Gasket).Good(10, 550, Gasket).Observe().Lives).Entry.Value);
        Assert.Equal(300, Assert.Single(new InventedAircraft().Installed(1, 500, Gasket, 300).Good(10, 550, Gasket).Observe().Lives).Entry.Value);
    }

    [Fact]
    public void Found_failed_at_the_first_look_it_failed_before_entry()
    {
        var life = Assert.Single(new InventedAircraft().Installed(-300, 200, Gasket).Found(10, 650, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(LifeExclusion.FailedBeforeEntry, life.Exclusion);
        Assert.Null(life.ForFit());
    }

    [Fact]
    public void Found_failed_before_the_watch_and_kept_it_failed_before_entry()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(-300, 200, Gasket).Found(-20, 600, Gasket, Condition.LeakTrace)
                .Did(-20, 600, Gasket, ActionKind.Retorqued).Good(10, 650, Gasket).Observe().Lives);
        Assert.Equal(LifeExclusion.FailedBeforeEntry, life.Exclusion);
    }

    [Fact]
    public void A_life_that_ended_before_the_watch_is_not_listed()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(-300, 200, Gasket).Found(-100, 400, Gasket, Condition.LeakTrace)
                .Did(-100, 400, Gasket, ActionKind.Replaced).Good(10, 650, Gasket).Observe().Lives);
        Assert.Equal(250, life.Entry.Value);
        Assert.Null(life.Exclusion);
    }

    [Fact]
    public void With_no_start_recorded_its_age_is_unknown_and_not_zero()
    {
        var life = Assert.Single(new InventedAircraft().Good(10, 650, Gasket).Found(50, 750, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(LifeExclusion.AgeUnknown, life.Exclusion);
        Assert.Equal(LifeEnding.Failed, life.Ending);
        Assert.Null(life.ForFit());
        Assert.Null(life.FirstBad);
    }

    [Fact]
    public void Hours_on_the_part_unknown_is_age_unknown_until_the_next_renewal()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, Gasket, partHours: null).Good(10, 550, Gasket).Did(20, 600, Gasket, ActionKind.Replaced).Good(50, 750, Gasket).Observe().Lives;
        Assert.Equal([LifeExclusion.AgeUnknown, null], lives.Select(l => l.Exclusion));
        Assert.Equal(new Statistics.Lives.Life(150, double.PositiveInfinity, 0), lives[1].ForFit());
    }

    [Fact]
    public void A_place_without_a_life_has_no_lives() =>
        Assert.Empty(new InventedAircraft().Installed(1, 500, Weld).Good(10, 650, Weld).Observe().Lives);

    [Fact]
    public void A_first_installation_on_record_says_nothing_of_a_part_before() =>
        Assert.Single(new InventedAircraft().Installed(0, 500, Gasket).Good(10, 650, Gasket).Observe().Lives);
}
