using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 11. Hours on the part by hand: hours at each place added up.</summary>
public sealed class PartsMoveTests
{
    [Fact] // 120 h in cylinder 1, then into cylinder 3 at 700: entry 120; good at 800: 220.
    public void A_part_with_a_serial_number_carries_its_hours_to_another_location()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, OtherGasket, serial: "G1").Good(20, 600, OtherGasket).Removed(30, 620, OtherGasket, RemovalReason.Access, serial: "G1")
            .Installed(50, 700, Gasket, partHours: null, serial: "G1").Good(80, 800, Gasket).Observe().Lives;
        var second = lives.Single(l => l.Location == Gasket);
        Assert.Null(second.Exclusion);
        Assert.Equal(new Statistics.Lives.Life(220, double.PositiveInfinity, 120), second.ForFit());
        Assert.Contains("ZZ-A01-004", second.Evidence.Select(k => k.SourceRecordId));
    }

    [Fact] // Out of A with 30 + 200 = 230 h, into B at 4000, good there at 4050: 280.
    public void It_carries_them_from_one_aircraft_to_another()
    {
        var a = new InventedAircraft("ZZ-A01").Installed(1, 500, Gasket, 30, "G1").Good(20, 600, Gasket).Removed(40, 700, Gasket, RemovalReason.Access);
        var b = new InventedAircraft("ZZ-B02").Installed(40, 4000, Gasket, null, "G1").Good(60, 4050, Gasket);
        foreach (var histories in new[] { new[] { a.History, b.History }, [b.History, a.History] })
        {
            var fleet = Fleet(1000, histories);
            var life = Assert.Single(fleet.Single(o => o.Registration == "ZZ-B02").Lives);
            Assert.Equal(new Statistics.Lives.Life(280, double.PositiveInfinity, 230), life.ForFit());
            Assert.All(fleet, o => Assert.Empty(o.Problems));
        }

        Assert.Equal(LifeExclusion.AgeUnknown, Assert.Single(b.Observe().Lives).Exclusion);
    }

    [Fact]
    public void A_part_recorded_in_two_places_at_once_is_listed_and_its_age_is_not_guessed()
    {
        var seen = new InventedAircraft()
            .Installed(1, 500, OtherGasket, serial: "G1").Good(20, 600, OtherGasket).Installed(50, 700, Gasket, null, "G1").Good(80, 800, Gasket).Observe();
        Assert.Equal(DataProblemKind.SerialNumberConflict, Assert.Single(seen.Problems).Kind);
        Assert.Equal(LifeExclusion.AgeUnknown, seen.Lives.Single(l => l.Location == Gasket).Exclusion);
    }

    [Fact]
    public void Hours_that_do_not_carry_over_are_listed_and_those_recorded_are_used()
    {
        var seen = new InventedAircraft()
            .Installed(1, 500, OtherGasket, serial: "G1").Removed(30, 620, OtherGasket, RemovalReason.Access)
            .Installed(50, 700, Gasket, 10, "G1").Good(80, 800, Gasket).Observe();
        Assert.Equal(DataProblemKind.SerialNumberConflict, Assert.Single(seen.Problems).Kind);
        Assert.Equal(10, seen.Lives.Single(l => l.Location == Gasket).Entry.Value);
    }

    [Fact]
    public void A_part_whose_age_was_unknown_stays_of_unknown_age()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, OtherGasket, null, "G1").Good(20, 600, OtherGasket).Removed(30, 620, OtherGasket, RemovalReason.Access)
            .Installed(50, 700, Gasket, null, "G1").Good(80, 800, Gasket).Observe().Lives;
        Assert.All(lives, l => Assert.Equal(LifeExclusion.AgeUnknown, l.Exclusion));
    }

    [Fact] // The same number on a coupling is another part.
    public void A_serial_number_is_one_of_its_kind_of_part()
    {
        var seen = new InventedAircraft().Installed(1, 500, Gasket, serial: "1").Installed(2, 500, Coupling, null, "1").Good(20, 600, Gasket, Coupling).Observe();
        Assert.Empty(seen.Problems);
        Assert.Equal(LifeExclusion.AgeUnknown, seen.Lives.Single(l => l.Location == Coupling).Exclusion);
    }

    [Fact] // Conservation: hours on parts at a position, added up, are the hours of the airframe over the same days.
    public void Hours_at_a_position_add_up_to_hours_of_the_airframe()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, Gasket).Good(20, 600, Gasket)
            .Removed(30, 640, Gasket, examinedGood: true).Installed(30, 640, Gasket)
            .Removed(60, 790, Gasket, examinedGood: true).Installed(60, 790, Gasket).Good(90, 900, Gasket).Observe().Lives;
        Assert.Equal(900 - 500, lives.Sum(l => (l.LastGood - l.Entry).Value));
    }
}
