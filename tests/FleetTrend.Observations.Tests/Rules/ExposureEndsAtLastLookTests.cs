using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 1. All expected hours are differences of the hours written in the test.</summary>
public sealed class ExposureEndsAtLastLookTests
{
    [Fact]
    public void Exposure_runs_from_the_first_look_to_the_last_and_not_to_the_hours_of_today()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld).Good(50, 200, Weld).Good(90, 300, Weld).Read(120, 380).Observe();
        var exposure = Assert.Single(seen.Exposures);
        Assert.Equal(100, exposure.From.Value);
        Assert.Equal(300, exposure.To.Value);
        Assert.Equal([100, 200, 300], exposure.LookHours.Select(h => h.Value));
        Assert.Equal(380, seen.Latest!.Hours.Value);
    }

    [Theory]
    [InlineData(LookState.NotExamined)]
    [InlineData(LookState.CouldNotExamine)]
    public void A_location_not_examined_adds_none(LookState state)
    {
        var seen = new InventedAircraft().Good(10, 100, Weld).Good(50, 200, Weld).Inspected(90, 300, state, Weld).Observe();
        Assert.Equal(200, Assert.Single(seen.Exposures).To.Value);
    }

    [Fact]
    public void An_inspection_without_a_line_for_the_location_adds_none()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld, Gasket).Good(50, 200, Weld, Gasket).Good(90, 300, Gasket).Observe();
        Assert.Equal(200, seen.Exposures.Single(e => e.Location == Weld).To.Value);
        Assert.Equal(300, seen.Exposures.Single(e => e.Location == Gasket).To.Value);
    }

    [Fact]
    public void A_finding_is_a_look_by_itself_even_where_the_inspection_says_not_examined()
    {
        var seen = new InventedAircraft().Good(10, 100, Weld).NotExamined(50, 200, Weld).Found(50, 200, Weld, Condition.Crack).Observe();
        Assert.Equal(200, Assert.Single(seen.Exposures).To.Value);
    }

    [Fact]
    public void An_action_or_a_removal_is_no_look()
    {
        var seen = new InventedAircraft().Good(10, 100, Gasket).Good(50, 200, Gasket)
            .Did(90, 300, Gasket, ActionKind.Retorqued).Removed(95, 310, Gasket).Observe();
        Assert.Equal(200, Assert.Single(seen.Exposures).To.Value);
    }

    [Fact]
    public void Exposure_starts_at_an_installation_recorded_before_the_first_look()
    {
        var seen = new InventedAircraft().Installed(5, 60, Weld).Good(10, 100, Weld).Observe();
        var exposure = Assert.Single(seen.Exposures);
        Assert.Equal(60, exposure.From.Value);
        Assert.Equal(100, exposure.To.Value);
        Assert.Equal(1, exposure.LookCount);
    }

    [Fact]
    public void A_part_that_went_out_before_any_look_adds_none()
    {
        var seen = new InventedAircraft().Installed(1, 60, Gasket).Did(20, 150, Gasket, ActionKind.Replaced).Good(30, 200, Gasket).Observe();
        Assert.Equal(150, Assert.Single(seen.Exposures).From.Value);
    }

    [Fact]
    public void A_replacement_between_looks_does_not_split_exposure()
    {
        var seen = new InventedAircraft().Good(10, 100, Gasket).Did(20, 150, Gasket, ActionKind.Replaced).Good(30, 200, Gasket).Observe();
        Assert.Equal(100, Assert.Single(seen.Exposures).Duration.Value);
    }

    [Fact]
    public void Hours_before_the_watch_are_no_exposure()
    {
        var seen = new InventedAircraft().Installed(-200, 10, Weld).Good(-100, 40, Weld).Good(10, 100, Weld).Good(50, 200, Weld).Observe();
        Assert.Equal(100, Assert.Single(seen.Exposures).From.Value);
    }

    [Fact]
    public void A_single_look_gives_no_hours()
    {
        Assert.Empty(new InventedAircraft().Good(10, 100, Weld).Observe().Exposures);
        Assert.Empty(new InventedAircraft().Installed(10, 100, Weld).Observe().Exposures);
    }

    [Fact]
    public void What_the_first_look_finds_was_present_at_entry_and_starts_what_follows()
    {
        var seen = new InventedAircraft()
            .Found(10, 100, Weld, Condition.Crack).Did(10, 100, Weld, ActionKind.WeldRepaired)
            .Good(50, 200, Weld).Found(90, 300, Weld, Condition.Crack).Observe();
        Assert.Equal([true, false], seen.Events.Select(e => e.PresentAtEntry));
        Assert.Null(seen.Events[0].LastGood);
        Assert.Equal(200, seen.Events[1].LastGood!.Value.Value);
        Assert.Equal(2, seen.Events[1].Ordinal);
        Assert.Equal(ActionKind.WeldRepaired, seen.Events[1].SinceAction);
        Assert.Equal(200, Assert.Single(seen.Exposures).Duration.Value);
    }

    [Fact]
    public void With_a_watched_installation_before_it_the_first_finding_is_an_event()
    {
        var seen = new InventedAircraft().Installed(5, 60, Weld).Found(10, 100, Weld, Condition.Crack).Observe();
        var first = Assert.Single(seen.Events);
        Assert.False(first.PresentAtEntry);
        Assert.Equal(60, first.LastGood!.Value.Value);
    }
}
