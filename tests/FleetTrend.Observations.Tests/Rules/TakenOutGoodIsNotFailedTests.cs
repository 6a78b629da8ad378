using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 4. Ages are hours of the look less hours of the installation, written in the test.</summary>
public sealed class TakenOutGoodIsNotFailedTests
{
    private static readonly Statistics.Lives.Life GoodAt205 = new(205, double.PositiveInfinity, 0);

    [Theory]
    [InlineData(RemovalReason.TimeLimit, LifeEnding.RemovedGood)]
    [InlineData(RemovalReason.WithSisters, LifeEnding.RemovedGood)]
    [InlineData(RemovalReason.Access, LifeEnding.RemovedGood)]
    [InlineData(RemovalReason.Other, LifeEnding.RemovedGood)]
    [InlineData(RemovalReason.AircraftRetired, LifeEnding.AircraftRetired)]
    public void Taken_out_for_another_reason_it_is_censored_at_its_last_good_look(RemovalReason reason, LifeEnding ending)
    {
        var life = Assert.Single(new InventedAircraft().Installed(1, 500, Gasket).Good(80, 705, Gasket).Removed(120, 812, Gasket, reason).Observe().Lives);
        Assert.Equal(ending, life.Ending);
        Assert.Equal(GoodAt205, life.ForFit());
    }

    [Fact]
    public void Examined_good_at_removal_it_is_censored_there()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(80, 705, Gasket).Removed(120, 812, Gasket, examinedGood: true).Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(312, double.PositiveInfinity, 0), life.ForFit());
    }

    [Fact] // One gasket leaks, all are renewed: one failure and one censored life, not two failures.
    public void Sisters_renewed_with_a_failed_part_are_not_failures()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, Gasket).Installed(1, 500, OtherGasket).Good(80, 705, Gasket, OtherGasket)
            .Found(120, 812, Gasket, Condition.LeakTrace).Did(120, 812, Gasket, ActionKind.Replaced)
            .Removed(120, 812, OtherGasket, RemovalReason.WithSisters).Installed(120, 812, OtherGasket)
            .Good(160, 900, Gasket, OtherGasket).Observe().Lives;
        Assert.Equal(4, lives.Count);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), lives.Single(l => l.Location == Gasket && l.Ending == LifeEnding.Failed).ForFit());
        Assert.Equal(GoodAt205, lives.Single(l => l.Location == OtherGasket && l.Ending == LifeEnding.RemovedGood).ForFit());
        Assert.Equal(2, lives.Count(l => l.Ending == LifeEnding.InService));
    }

    [Fact]
    public void Replaced_with_no_defect_found_it_was_taken_out_good()
    {
        var lives = new InventedAircraft().Installed(1, 500, Gasket).Good(80, 705, Gasket).Did(120, 812, Gasket, ActionKind.Replaced).Observe().Lives;
        Assert.Equal(LifeEnding.RemovedGood, lives[0].Ending);
        Assert.Equal(GoodAt205, lives[0].ForFit());
    }

    [Fact]
    public void Never_looked_at_it_says_nothing()
    {
        var lives = new InventedAircraft().Installed(1, 500, Gasket).Did(120, 812, Gasket, ActionKind.Replaced).Observe().Lives;
        Assert.All(lives, l => Assert.Equal(LifeExclusion.NeverExamined, l.Exclusion));
    }

    [Fact]
    public void Still_there_it_is_censored_at_its_last_good_look_and_its_age_now_is_told_apart()
    {
        var life = Assert.Single(new InventedAircraft().Installed(1, 500, Gasket, 20).Good(80, 705, Gasket).Read(100, 790).Observe().Lives);
        Assert.Equal(LifeEnding.InService, life.Ending);
        Assert.Equal(225, life.LastGood.Value);
        Assert.Equal(310, life.AgeNow!.Value.Value);
    }

    [Fact]
    public void When_the_aircraft_leaves_the_fleet_its_parts_are_censored_at_their_last_good_looks()
    {
        var life = Assert.Single(new InventedAircraft(retired: 150).Installed(1, 500, Gasket).Good(80, 705, Gasket).Read(140, 790).Observe().Lives);
        Assert.Equal(LifeEnding.AircraftRetired, life.Ending);
        Assert.Equal(GoodAt205, life.ForFit());
        Assert.Null(life.AgeNow);
    }

    [Fact]
    public void Taken_out_for_another_reason_after_it_was_found_failed_it_stays_failed()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(80, 705, Gasket).Found(120, 812, Gasket, Condition.LeakTrace).Did(120, 812, Gasket, ActionKind.Deferred)
            .Removed(140, 850, Gasket, RemovalReason.Access).Observe().Lives);
        Assert.Equal(LifeEnding.Failed, life.Ending);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), life.ForFit());
    }

    [Fact]
    public void Removals_and_installations_that_do_not_match_are_listed()
    {
        var seen = new InventedAircraft()
            .Installed(1, 500, Gasket, serial: "G1").Good(80, 705, Gasket)
            .Installed(120, 812, Gasket, serial: "G2").Removed(160, 900, Gasket, serial: "G9").Removed(170, 910, Gasket).Observe();
        Assert.Equal(3, seen.Problems.Count(p => p.Kind == DataProblemKind.InstallationMismatch));
        Assert.Equal(GoodAt205, seen.Lives[0].ForFit());
    }
}
