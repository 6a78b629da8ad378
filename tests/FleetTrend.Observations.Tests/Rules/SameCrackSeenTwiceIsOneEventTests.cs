using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 6. Counts follow from the records written in the test.</summary>
public sealed class SameCrackSeenTwiceIsOneEventTests
{
    private static InventedAircraft Watched => new InventedAircraft().Good(10, 100, Weld);

    [Theory]
    [InlineData(ActionKind.Deferred)]
    [InlineData(ActionKind.Monitored)]
    public void While_deferred_or_monitored_it_is_one_event_and_growth_is_a_measurement(ActionKind held)
    {
        var seen = Watched
            .Found(20, 200, Weld, Condition.Crack, size: 4).Did(20, 200, Weld, held)
            .Found(40, 300, Weld, Condition.Crack, size: 6).Did(40, 300, Weld, held)
            .Found(60, 400, Weld, Condition.Crack, size: 9).Observe();
        var crack = Assert.Single(seen.Events);
        Assert.Equal(200, crack.Found.Value);
        Assert.Equal(100, crack.LastGood!.Value.Value);
        Assert.Equal([(200, 4), (300, 6), (400, 9)], crack.Sizes.Select(s => (s.At.Value, s.Millimetres)));
        Assert.Null(crack.ClosedDate);
        Assert.Equal(5, crack.Evidence.Count);
    }

    [Fact] // Found 20, monitored that day and again on day 40, welded on day 60: three actions, each with its own day.
    public void What_was_done_while_it_was_open_keeps_its_own_days()
    {
        var seen = Watched
            .Found(20, 200, Weld, Condition.Crack).Did(20, 200, Weld, ActionKind.Monitored)
            .Found(40, 300, Weld, Condition.Crack).Did(40, 300, Weld, ActionKind.Deferred)
            .Did(60, 400, Weld, ActionKind.WeldRepaired).Observe();
        var crack = Assert.Single(seen.Events);
        Assert.Equal(Day(20), crack.FoundDate);
        Assert.Equal(
            [(ActionKind.Monitored, Day(20), 200.0), (ActionKind.Deferred, Day(40), 300.0), (ActionKind.WeldRepaired, Day(60), 400.0)],
            crack.Actions.Select(a => (a.Kind, a.Date, a.At.Value)));
    }

    [Fact]
    public void Without_any_action_it_is_still_one_event() =>
        Assert.Single(Watched.Found(20, 200, Weld, Condition.Crack).Found(40, 300, Weld, Condition.Crack).Observe().Events);

    [Fact]
    public void After_an_action_that_closed_it_a_finding_is_a_new_event()
    {
        var seen = Watched.Found(20, 200, Weld, Condition.Crack).Did(21, 205, Weld, ActionKind.StopDrilled).Found(40, 300, Weld, Condition.Crack).Observe();
        Assert.Equal(2, seen.Events.Count);
        Assert.Equal(Day(21), seen.Events[0].ClosedDate);
        Assert.Null(seen.Events[1].ClosedDate);
    }

    [Fact]
    public void Two_findings_at_one_look_are_two_events() =>
        Assert.Equal(2, Watched.Found(20, 200, Weld, Condition.Crack).Found(20, 200, Weld, Condition.Crack).Observe().Events.Count);

    [Fact]
    public void Unless_the_source_says_that_they_are_one() =>
        Assert.Single(Watched.Found(20, 200, Weld, Condition.Crack, id: "a").Found(20, 200, Weld, Condition.Crack, id: "b", sameAs: "a").Observe().Events);

    [Fact] // A squawk, closed the same day, and the sheet of two days later that lists it again.
    public void A_finding_that_the_source_links_to_a_closed_event_is_that_event()
    {
        var seen = Watched
            .Found(20, 200, Weld, Condition.Crack, id: "squawk").Did(20, 200, Weld, ActionKind.WeldRepaired)
            .Found(22, 200, Weld, Condition.Crack, id: "sheet", sameAs: "squawk").Observe();
        Assert.Equal(Day(20), Assert.Single(seen.Events).ClosedDate);
    }

    [Fact] // One open; three found: one seen again, two new, and these were not there at the look before.
    public void Of_three_findings_with_one_open_two_are_new()
    {
        var seen = Watched
            .Found(20, 200, Weld, Condition.Crack, size: 5).Did(20, 200, Weld, ActionKind.Monitored)
            .Found(40, 300, Weld, Condition.Crack, size: 2).Found(40, 300, Weld, Condition.Crack, size: 7)
                .Found(40, 300, Weld, Condition.Crack, size: 1).Observe();
        Assert.Equal(3, seen.Events.Count);
        Assert.Equal([5, 7], seen.Events[0].Sizes.Select(s => s.Millimetres));
        Assert.All(seen.Events.Skip(1), e => Assert.Equal(200, e.LastGood!.Value.Value));
        Assert.Equal([1, 2, 3], seen.Events.Select(e => e.Ordinal));
    }

    [Fact]
    public void Another_condition_or_another_location_is_another_event()
    {
        var seen = Watched.Good(10, 100, Gasket)
            .Found(20, 200, Weld, Condition.Crack).Found(40, 300, Weld, Condition.LeakTrace).Found(40, 300, Gasket, Condition.Crack).Observe();
        Assert.Equal(3, seen.Events.Count);
    }

    [Fact]
    public void A_later_good_look_without_an_action_closes_it_and_is_listed()
    {
        var seen = Watched.Found(20, 200, Weld, Condition.Crack).Good(40, 300, Weld).Found(60, 400, Weld, Condition.Crack).Observe();
        Assert.Equal(2, seen.Events.Count);
        Assert.Equal(Day(40), seen.Events[0].ClosedDate);
        Assert.Null(seen.Events[0].ClosedBy);
        Assert.Null(seen.Events[1].SinceAction);
        Assert.Equal(DataProblemKind.ActionNotRecorded, Assert.Single(seen.Problems).Kind);
    }

    [Fact]
    public void A_later_good_look_leaves_open_what_was_deferred()
    {
        var seen = Watched
            .Found(20, 200, Weld, Condition.Crack).Did(20, 200, Weld, ActionKind.Deferred).Good(40, 300, Weld).Found(60, 400, Weld, Condition.Crack).Observe();
        Assert.Null(Assert.Single(seen.Events).ClosedDate);
        Assert.Equal(DataProblemKind.OpenFindingNotMentioned, Assert.Single(seen.Problems).Kind); // the look of day 40 says nothing of it
    }

    [Fact]
    public void A_repair_on_the_day_of_the_good_look_is_the_action_that_closed_it()
    {
        var seen = Watched.Found(20, 200, Weld, Condition.Crack).Good(40, 300, Weld).Did(40, 300, Weld, ActionKind.WeldRepaired).Observe();
        Assert.Equal(ActionKind.WeldRepaired, Assert.Single(seen.Events).ClosedBy);
        Assert.Empty(seen.Problems);
    }

    [Fact]
    public void An_action_before_the_finding_does_not_close_it() =>
        Assert.Null(Assert.Single(Watched.Did(15, 150, Weld, ActionKind.WeldRepaired).Found(20, 200, Weld, Condition.Crack).Observe().Events).ClosedDate);

    [Fact]
    public void An_accepted_finding_is_no_event() =>
        Assert.Empty(Watched.Found(20, 200, Weld, Condition.LeakTrace, grade: FindingGrade.Accepted).Observe().Events);

    [Fact]
    public void What_was_open_when_the_watch_began_is_present_at_entry_and_not_counted_twice()
    {
        var seen = new InventedAircraft()
            .Found(-40, 50, Weld, Condition.Crack).Did(-40, 50, Weld, ActionKind.Monitored)
            .Found(-60, 40, Gasket, Condition.Crack).Did(-60, 40, Gasket, ActionKind.Replaced)
            .Found(20, 200, Weld, Condition.Crack).Observe();
        var crack = Assert.Single(seen.Events);
        Assert.True(crack.PresentAtEntry);
        Assert.Equal(Day(-40), crack.FoundDate);
    }
}
