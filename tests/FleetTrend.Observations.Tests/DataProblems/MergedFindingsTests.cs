using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>What a person has merged is one event: the merged finding counts as seen at the look of the one that stands. By hand.</summary>
public sealed class MergedFindingsTests
{
    [Fact]
    public void Two_findings_of_one_look_become_one_event_with_both_rows()
    {
        var aircraft = new InventedAircraft().Good(10, 100, Weld)
            .Found(40, 130, Weld, Condition.Crack, 4, id: "c").Found(40, 130, Weld, Condition.Crack, 5, id: "t", source: "tablet");
        Assert.Equal(2, aircraft.Observe().Events.Count);

        var seen = aircraft.Merged("cards", "c", "tablet", "t").Observe();
        var crack = Assert.Single(seen.Events);
        Assert.Equal(["c", "t"], crack.Evidence.Select(k => k.SourceRecordId).Order(StringComparer.Ordinal));
        Assert.Equal(100, crack.LastGood!.Value.Value);
        Assert.Empty(seen.Problems);
    }

    [Fact] // Found and weld-repaired on day 40; the tablet's card of the same crack is dated day 42.
    public void A_card_dated_after_the_repair_is_no_recurrence_once_it_is_merged()
    {
        var aircraft = new InventedAircraft().Good(10, 100, Weld)
            .Found(40, 130, Weld, Condition.Crack, id: "c").Did(40, 130, Weld, ActionKind.WeldRepaired)
            .Found(42, 131, Weld, Condition.Crack, id: "t", source: "tablet");
        Assert.Equal([null, ActionKind.WeldRepaired], aircraft.Observe().Events.Select(e => e.SinceAction));

        var crack = Assert.Single(aircraft.Merged("cards", "c", "tablet", "t").Observe().Events);
        Assert.Equal(ActionKind.WeldRepaired, crack.ClosedBy);
        Assert.Equal(130, crack.Found.Value);
    }

    [Fact] // The gasket leaked and was replaced on day 40; merged, the tablet's day 42 is about the old gasket and the new one is good.
    public void A_card_dated_after_a_replacement_does_not_fail_the_new_part()
    {
        var aircraft = new InventedAircraft().Installed(5, 90, Gasket).Good(10, 100, Gasket)
            .Found(40, 130, Gasket, Condition.LeakTrace, id: "c").Did(40, 130, Gasket, ActionKind.Replaced)
            .Examined("tablet", 42, 131, Gasket).Found(42, 131, Gasket, Condition.LeakTrace, id: "t", source: "tablet")
            .Good(80, 200, Gasket);
        Assert.Equal(2, aircraft.Observe().Lives.Count(l => l.Ending == Lives.LifeEnding.Failed));

        var seen = aircraft.Merged("cards", "c", "tablet", "t").Observe();
        Assert.Equal([Lives.LifeEnding.Failed, Lives.LifeEnding.InService], seen.Lives.Select(l => l.Ending));
        Assert.Single(seen.Events);
    }

    [Fact] // Open on day 40; the tablet examined the place on day 42 and that card is merged: it must not read as a good look.
    public void The_inspection_of_the_merged_card_is_no_good_look_at_an_open_crack()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld)
            .Found(40, 130, Weld, Condition.Crack, id: "c")
            .Examined("tablet", 42, 131, Weld).Found(42, 131, Weld, Condition.Crack, id: "t", source: "tablet")
            .Merged("cards", "c", "tablet", "t").Observe();
        Assert.Null(Assert.Single(seen.Events).ClosedDate);
        Assert.Empty(seen.Problems);
    }

    [Fact]
    public void A_merge_leads_to_where_its_finding_was_merged()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld)
            .Found(40, 130, Weld, Condition.Crack, id: "c")
            .Found(40, 130, Weld, Condition.Crack, id: "t", source: "tablet").Found(41, 130, Weld, Condition.Crack, id: "p", source: "partner")
            .Merged("tablet", "t", "partner", "p").Merged("cards", "c", "tablet", "t").Observe();
        Assert.Equal(3, Assert.Single(seen.Events).Evidence.Count);
    }

    [Fact]
    public void Where_a_revision_moved_one_of_them_both_count_and_the_merge_is_listed()
    {
        var moved = new InventedAircraft().Good(10, 100, Gasket, OtherGasket)
            .Found(40, 130, Gasket, Condition.LeakTrace, id: "c").Found(40, 130, OtherGasket, Condition.LeakTrace, id: "t", source: "tablet", revision: 2)
            .Merged("cards", "c", "tablet", "t").Observe();
        Assert.Equal(2, moved.Events.Count);
        Assert.Equal(DataProblemKind.MergeDoesNotFit, Assert.Single(moved.Problems).Kind);

        var takenBack = new InventedAircraft().Good(10, 100, Gasket)
            .Found(40, 130, Gasket, Condition.LeakTrace, id: "t", source: "tablet").Merged("cards", "c", "tablet", "t").Observe();
        Assert.Single(takenBack.Events);
        Assert.Equal(DataProblemKind.MergeDoesNotFit, Assert.Single(takenBack.Problems).Kind);
    }
}
