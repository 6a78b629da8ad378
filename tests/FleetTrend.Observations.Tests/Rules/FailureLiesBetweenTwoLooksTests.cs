using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 2. Ages are hours of the look less hours of the installation, written in the test.</summary>
public sealed class FailureLiesBetweenTwoLooksTests
{
    [Fact] // The rule's own example with the part put in at 500: good at 705, bad at 812, so it failed at an age in (205, 312].
    public void Failure_is_after_the_last_good_look_and_not_at_the_hours_of_the_finding()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(40, 610, Gasket).Good(80, 705, Gasket).Found(120, 812, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(LifeEnding.Failed, life.Ending);
        Assert.Equal(Condition.LeakTrace, life.Failure);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), life.ForFit());
        Assert.False(life.ForFit()!.Value.IsExact);
        Assert.Null(life.AgeNow);
    }

    [Fact]
    public void With_no_good_look_before_it_failed_after_entry()
    {
        var life = Assert.Single(new InventedAircraft().Installed(1, 500, Gasket, partHours: 40).Found(120, 812, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(40, 352, 40), life.ForFit());
    }

    [Fact]
    public void Looks_that_did_not_examine_it_are_not_good_looks()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(40, 610, Gasket).NotExamined(80, 705, Gasket).Good(85, 720, Weld).Found(120, 812, Gasket, Condition.LeakTrace)
            .Observe().Lives);
        Assert.Equal(110, life.LastGood.Value);
    }

    [Fact]
    public void An_accepted_finding_is_a_good_look()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Found(80, 705, Gasket, Condition.LeakTrace, grade: FindingGrade.Accepted).Found(120, 812, Gasket, Condition.LeakTrace)
            .Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), life.ForFit());
    }

    [Fact] // Looseness does not end a gasket's life; the look that found it found the gasket not failed.
    public void A_defect_that_is_no_failure_of_the_part_leaves_it_good()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Found(80, 705, Gasket, Condition.Looseness).Did(80, 705, Gasket, ActionKind.Retorqued)
            .Found(120, 812, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), life.ForFit());
    }

    [Fact] // Two looks at the same hours: the interval reaches back to the look before, it does not become a point.
    public void A_good_look_at_the_very_hours_of_the_bad_one_does_not_make_the_failure_exact()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(40, 610, Gasket).Good(80, 705, Gasket).Found(81, 705, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(new Statistics.Lives.Life(110, 205, 0), life.ForFit());
    }

    [Fact]
    public void A_failure_with_no_hours_flown_is_counted_apart()
    {
        var life = Assert.Single(new InventedAircraft().Installed(1, 500, Gasket).Found(2, 500, Gasket, Condition.LeakTrace).Observe().Lives);
        Assert.Equal(LifeExclusion.NoHours, life.Exclusion);
        Assert.Null(life.ForFit());
    }

    [Fact]
    public void Removed_as_failed_without_a_finding_is_a_first_bad_look()
    {
        var life = Assert.Single(new InventedAircraft()
            .Installed(1, 500, Gasket).Good(80, 705, Gasket).Removed(120, 812, Gasket, RemovalReason.Failed).Observe().Lives);
        Assert.Equal(LifeEnding.Failed, life.Ending);
        Assert.Null(life.Failure);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), life.ForFit());
    }

    [Fact]
    public void An_event_carries_the_same_interval()
    {
        var seen = new InventedAircraft().Good(40, 610, Weld).Good(80, 705, Weld).Found(120, 812, Weld, Condition.Crack).Observe();
        Assert.Equal(705, Assert.Single(seen.Events).LastGood!.Value.Value);
        Assert.Equal(812, seen.Events[0].Found.Value);
    }

    [Fact]
    public void The_evidence_is_the_start_the_last_good_look_and_the_bad_one()
    {
        var aircraft = new InventedAircraft().Installed(1, 500, Gasket).Good(40, 610, Gasket)
            .Good(80, 705, Gasket).Found(120, 812, Gasket, Condition.LeakTrace);
        Assert.Equal(["ZZ-A01-002", "ZZ-A01-004", "ZZ-A01-005"], Assert.Single(aircraft.Observe().Lives).Evidence.Select(k => k.SourceRecordId));
    }
}
