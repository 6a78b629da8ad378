using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 5. Ages and clocks are differences of the hours written in the test.</summary>
public sealed class ReplacementRenewsRepairDoesNotTests
{
    [Theory]
    [InlineData(ActionKind.StopDrilled)]
    [InlineData(ActionKind.WeldRepaired)]
    [InlineData(ActionKind.Retorqued)]
    [InlineData(ActionKind.Resurfaced)]
    [InlineData(ActionKind.Cleaned)]
    [InlineData(ActionKind.Adjusted)]
    [InlineData(ActionKind.Lubricated)]
    public void A_repair_starts_a_clock_and_no_life(ActionKind repair)
    {
        var seen = new InventedAircraft()
            .Installed(1, 0, Gasket).Good(20, 100, Gasket).Found(40, 200, Gasket, Condition.Crack).Did(42, 210, Gasket, repair)
            .Good(60, 300, Gasket).Found(80, 400, Gasket, Condition.Crack).Observe();

        Assert.Equal([1, 2], seen.Events.Select(e => e.Ordinal));
        Assert.Equal(repair, seen.Events[1].SinceAction);
        Assert.Equal(210, seen.Events[1].SinceActionHours!.Value.Value);
        Assert.Equal(300, seen.Events[1].LastGood!.Value.Value);
        Assert.Equal(repair, seen.Events[0].ClosedBy);

        var life = Assert.Single(seen.Lives);
        Assert.Equal(new Statistics.Lives.Life(100, 200, 0), life.ForFit());
    }

    [Fact]
    public void A_replacement_starts_a_life_and_no_clock()
    {
        var seen = new InventedAircraft()
            .Installed(1, 0, Gasket).Good(20, 100, Gasket).Found(40, 200, Gasket, Condition.Crack).Did(42, 210, Gasket, ActionKind.Replaced)
            .Good(60, 300, Gasket).Found(80, 400, Gasket, Condition.Crack).Observe();

        Assert.Equal([1, 1], seen.Events.Select(e => e.Ordinal));
        Assert.Null(seen.Events[1].SinceAction);
        Assert.Equal([new Statistics.Lives.Life(100, 200, 0), new Statistics.Lives.Life(90, 190, 0)], seen.Lives.Select(l => l.ForFit()!.Value));
    }

    [Fact] // With no look in between, the crack arose after the repair, not after the look that found the one before it.
    public void Without_a_look_between_it_arose_after_the_repair()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack)
                .Did(42, 210, Weld, ActionKind.WeldRepaired).Found(80, 400, Weld, Condition.Crack).Observe();
        Assert.Equal(210, seen.Events[1].LastGood!.Value.Value);
    }

    [Fact] // Known from the events alone: which of them are on what is there now, and since when it is there.
    public void Events_before_a_renewal_say_when_it_was()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack).Did(42, 210, Weld, ActionKind.WeldRepaired)
            .Installed(50, 250, Weld).Found(80, 400, Weld, Condition.Crack).Did(82, 410, Weld, ActionKind.Replaced)
            .Found(99, 500, Weld, Condition.Crack).Observe();
        Assert.Equal([250, 410, null], seen.Events.Select(e => e.RenewedAt?.Value));
    }

    // Until then a repair is followed: the one of day 42 until 250 h; what went in on day 82 until 480 h, where no finding tells of it; the last one
    // until now.
    [Fact]
    public void Events_before_a_renewal_say_when_the_next_one_after_their_repair_was()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack).Did(42, 210, Weld, ActionKind.WeldRepaired)
            .Installed(50, 250, Weld).Found(80, 400, Weld, Condition.Crack).Did(82, 410, Weld, ActionKind.Replaced)
            .Good(90, 450, Weld).Did(95, 480, Weld, ActionKind.Replaced).Found(99, 500, Weld, Condition.Crack).Did(99, 500, Weld,
                ActionKind.WeldRepaired).Observe();
        Assert.Equal([250, 480, null], seen.Events.Select(e => e.NextRenewedAt?.Value));
    }

    [Fact] // Of a joint that was cleaned, freed and greased in one visit, the grease is what holds or not.
    public void Of_several_actions_of_a_day_the_one_that_changes_the_part_most_counts()
    {
        ActionKind[] weakest = [ActionKind.Cleaned, ActionKind.Lubricated, ActionKind.Adjusted, ActionKind.Retorqued, ActionKind.StopDrilled,
            ActionKind.Resurfaced,
            ActionKind.WeldRepaired, ActionKind.Replaced];
        foreach (var (weak, strong) in weakest.Zip(weakest.Skip(1)))
        {
            var seen = new InventedAircraft().Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack).Did(42, 210, Weld, strong).Did(42, 210, Weld,
                weak).Observe();
            Assert.Equal(strong, Assert.Single(seen.Events).ClosedBy);
        }
    }

    [Fact]
    public void After_a_replacement_it_arose_after_the_replacement()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack).Did(42, 210, Weld, ActionKind.Replaced).Found(80, 400, Weld, Condition.Crack).Observe();
        Assert.Equal(210, seen.Events[1].LastGood!.Value.Value);
    }

    [Fact]
    public void A_removal_and_an_installation_renew_too()
    {
        var seen = new InventedAircraft()
            .Installed(1, 0, Gasket).Found(40, 200, Gasket, Condition.Crack).Removed(42, 210, Gasket, RemovalReason.Failed)
            .Installed(42, 210, Gasket, partHours: 55).Good(60, 300, Gasket).Observe();
        Assert.Equal(ActionKind.Replaced, Assert.Single(seen.Events).ClosedBy);
        Assert.Equal(LifeEnding.Failed, seen.Lives[0].Ending);
        Assert.Equal(new Statistics.Lives.Life(145, double.PositiveInfinity, 55), seen.Lives[1].ForFit());
    }

    [Fact]
    public void An_installation_of_the_day_of_a_replacement_is_the_same_renewal_and_says_more()
    {
        var lives = new InventedAircraft()
            .Installed(1, 0, Gasket).Good(40, 200, Gasket).Did(42, 210, Gasket, ActionKind.Replaced).Installed(42, 210, Gasket, partHours: 30, serial: "G7")
            .Good(60, 300, Gasket).Observe().Lives;
        Assert.Equal(2, lives.Count);
        Assert.Equal("G7", lives[1].SerialNumber);
        Assert.Equal(new Statistics.Lives.Life(120, double.PositiveInfinity, 30), lives[1].ForFit());
    }

    [Fact]
    public void A_used_replacement_brings_its_hours()
    {
        var lives = new InventedAircraft().Did(42, 210, Gasket, ActionKind.Replaced, partHours: 70).Good(60, 300, Gasket).Observe().Lives;
        Assert.Equal(new Statistics.Lives.Life(160, double.PositiveInfinity, 70), lives[^1].ForFit());
    }

    [Fact] // Of two repairs on one day the one that changes the part most is the one whose hold is asked for.
    public void Stop_drilled_and_welded_on_one_day_counts_as_welded()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack)
            .Did(40, 200, Weld, ActionKind.WeldRepaired).Did(40, 200, Weld, ActionKind.StopDrilled).Did(40, 200, Weld, ActionKind.Monitored).Observe();
        Assert.Equal(ActionKind.WeldRepaired, Assert.Single(seen.Events).ClosedBy);
    }

    [Fact]
    public void The_clock_since_repair_is_that_of_the_same_condition()
    {
        var seen = new InventedAircraft()
            .Good(20, 100, Weld).Found(40, 200, Weld, Condition.Crack)
                .Did(40, 200, Weld, ActionKind.WeldRepaired).Found(80, 400, Weld, Condition.LeakTrace).Observe();
        Assert.Null(seen.Events.Single(e => e.Condition == Condition.LeakTrace).SinceAction);
        Assert.Equal(1, seen.Events.Single(e => e.Condition == Condition.LeakTrace).Ordinal);
    }
}
