using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Trends.Changes;

namespace FleetTrend.Trends.Tests;

public sealed class ChangeTests
{
    [Fact] // Planted: aircraft 0 cracks eight times as often over its last 200 h; aircraft 1 at twice the norm from the start; the rest are ordinary.
    public void A_tail_that_gets_worse_is_flagged_and_one_that_always_ran_high_is_not()
    {
        var changes = FleetBuilder.Find(new ChangeAnalysis(), ChangingFleet.Build(1, (aircraft, _, hours) => (aircraft, hours) switch
        {
            (0, > 530) => 8,
            (1, _) => 2,
            _ => 1,
        }));
        var worse = changes.Single(c => c.Registration == "ZZ-000" && c.Condition == Condition.Crack);
        Assert.Equal(FlagTier.Flag, worse.Tier);
        Assert.Equal("", worse.Part);
        Assert.InRange(worse.SinceDate, worse.SinceEarliestDate, worse.SinceLatestDate);
        Assert.InRange(FleetBuilder.Start.AddDays(530), worse.SinceEarliestDate, worse.SinceLatestDate.AddDays(28));
        Assert.True(worse.FoundSince > 3 * worse.ExpectedSince);
        Assert.Equal(1, worse.FalseCallsPer50AircraftYears);
        Assert.True(worse.AircraftYearsPerFalseCall >= 50);
        Assert.DoesNotContain(changes, c => c.Registration == "ZZ-001" && c.Tier == FlagTier.Flag);
    }

    [Fact] // Planted: the first weld of aircraft 3 alone cracks thirty times as often over the last 250 h.
    public void One_location_that_gets_worse_is_named()
    {
        var fleet = ChangingFleet.Build(2, (aircraft, weld, hours) => aircraft == 3 && weld == 0 && hours > 480 ? 30 : 1);
        var changes = FleetBuilder.Find(new ChangeAnalysis(), fleet);
        var worse = changes.Single(c => c.Registration == "ZZ-003");
        Assert.Equal(FlagTier.Flag, worse.Tier);
        Assert.Equal("exhaust/cyl-0/flange-weld", worse.Part);
        Assert.Equal([new ChangedLocation("exhaust/cyl-0/flange-weld", "flange-weld", worse.FoundSince)], worse.Locations);
    }

    [Fact] // Planted: all aircraft of one base of two crack four times as often over the last 200 h; the base is called, as a base.
    public void A_base_that_gets_worse_is_called_as_a_base()
    {
        var changes = FleetBuilder.Find(new ChangeAnalysis(), ChangingFleet.Build(3, (aircraft, _, hours) => aircraft % 2 == 1 && hours > 530 ? 4 : 1));
        var worse = changes.Single(c => c.Registration is null && c.Base == "south");
        Assert.Equal(FlagTier.Flag, worse.Tier);
        Assert.True(worse.FoundSince > 2 * worse.ExpectedSince);
        Assert.DoesNotContain(changes, c => c.Registration is null && c.Base == "north" && c.Tier is not null);
    }

    [Fact] // Ten ordinary fleets of 20 aircraft over two years: 400 aircraft-years, in which 8 flags begin; what still stands at the end are fewer.
    public void Ordinary_fleets_stay_quiet()
    {
        var flags = Enumerable.Range(10, 10).Sum(
            seed => FleetBuilder.Find(new ChangeAnalysis(), ChangingFleet.Build(seed, (_, _, _) => 1)).Count(c => c.Tier == FlagTier.Flag));
        Assert.InRange(flags, 0, 16); // a Poisson count of mean 8 is above 16 with chance 0.004
    }

    [Fact]
    public void The_same_aircraft_in_any_order_give_the_same_answers()
    {
        var fleet = ChangingFleet.Build(1, (aircraft, _, hours) => aircraft == 0 && hours > 530 ? 8 : 1);
        var first = FleetBuilder.Find(new ChangeAnalysis(), fleet).Select(c => (c.Registration, c.Base, c.Tier, c.LogScore, c.AircraftYearsPerFalseCall));
        var again = FleetBuilder.Find(new ChangeAnalysis(), [.. fleet.Reverse()])
            .Select(c => (c.Registration, c.Base, c.Tier, c.LogScore, c.AircraftYearsPerFalseCall));
        Assert.Equal(first, again);
    }

    [Fact] // Nobody can act on an aircraft that has left.
    public void A_retired_aircraft_is_not_called()
    {
        var fleet = ChangingFleet.Build(1, (aircraft, _, hours) => aircraft == 0 && hours > 530 ? 8 : 1);
        AircraftObservations[] retired = [.. fleet.Select(a => a.Registration == "ZZ-000" ? a with { RetiredDate = new DateOnly(2025, 12, 1) } : a)];
        Assert.DoesNotContain(FleetBuilder.Find(new ChangeAnalysis(), retired), c => c.Registration == "ZZ-000");
    }
}
