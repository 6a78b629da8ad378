using FleetTrend.Trends.Flags;

namespace FleetTrend.Trends.Tests;

/// <summary>Simulated fleets with known truth (fixed seeds): an ordinary fleet is called seldom, planted trouble is called.</summary>
public sealed class FalseCallTests
{
    private const int Fleets = 300;
    private const string TroubledWeld = "exhaust/cyl-0/flange-weld";

    // With no trouble anywhere a false discovery is any flag at all, so 5 % of fleets at most may have one (Benjamini and Hochberg 1995).
    // Three binomial standard errors of 300 fleets: 3 * sqrt(.05 * .95 / 300) = 0.038.
    private const double Most = 0.05 + 0.038;

    [Fact]
    public void An_ordinary_fleet_seldom_has_a_drift_flag() =>
        Assert.InRange(Share(FlagKind.AirframeDrift, seed => new SimulatedFleet { Seed = seed, Gaskets = 0 }), 0, Most);

    [Fact] // Counts so small that a normal approximation would call often.
    public void An_ordinary_fleet_with_rare_cracks_seldom_has_a_drift_flag() =>
        Assert.InRange(
            Share(FlagKind.AirframeDrift, seed => new SimulatedFleet { Seed = seed, Gaskets = 0, Aircraft = 8, CrackRate = 0.0001 }), 0, Most);

    [Fact]
    public void An_ordinary_fleet_seldom_has_a_base_flag() =>
        Assert.InRange(Share(FlagKind.BasePartLife, seed => new SimulatedFleet { Seed = seed, Welds = 0 }), 0, Most);

    [Fact] // Parts of one aircraft share its hazard. The test of parts as independent called some 26 % of such fleets.
    public void An_ordinary_fleet_of_aircraft_that_differ_seldom_has_a_base_flag() =>
        Assert.InRange(Share(FlagKind.BasePartLife, seed => new SimulatedFleet { Seed = seed, Welds = 0, AircraftSpread = 0.5 }), 0, Most);

    [Fact] // A handful of failures a base.
    public void An_ordinary_fleet_with_few_failures_seldom_has_a_base_flag() =>
        Assert.InRange(
            Share(FlagKind.BasePartLife, seed => new SimulatedFleet { Seed = seed, Welds = 0, Gaskets = 1, Aircraft = 12, GasketScale = 1200 }), 0, Most);

    [Fact] // One weld of one tail at a hundred times the rate of all others: some 14 cracks where 1.1 would come on the tail; chance gives as few as 5.
    public void One_weld_that_cracks_again_and_again_is_called() =>
        Assert.True(Share(
            f => f.Kind == FlagKind.AirframeDrift && f.Registration == "ZZ-000" && f.Locations[0] == TroubledWeld,
            seed => new SimulatedFleet { Seed = seed, Gaskets = 0, CrackRate = 0.0001, TroubleFactor = 100 }, 40) >= 0.9);

    [Fact] // At twenty times a higher rate elsewhere the tail as a whole stands out less; the place is called nearly always, by itself or within.
    public void One_weld_in_a_fleet_that_cracks_often_is_called_at_least_as_a_repeat() =>
        Assert.True(Share(
            f => f.Registration == "ZZ-000" && f.Locations[0] == TroubledWeld,
            seed => new SimulatedFleet { Seed = seed, Gaskets = 0, TroubleFactor = 20 }, 40) >= 0.95);

    [Fact] // Gaskets at the second base last half as long.
    public void A_base_with_short_gasket_life_is_called_and_not_the_other() =>
        Assert.All(Enumerable.Range(0, 20), seed =>
        {
            var flags = new SimulatedFleet { Seed = seed, Welds = 0, SouthLifeFactor = 0.5 }.Compute().Flags;
            Assert.Equal("south", Assert.Single(flags).Base);
        });

    private static double Share(FlagKind kind, Func<int, SimulatedFleet> fleet) => Share(f => f.Kind == kind, fleet, Fleets);

    private static double Share(Func<ProposedFlag, bool> isCounted, Func<int, SimulatedFleet> fleet, int fleets) =>
        Enumerable.Range(0, fleets).Count(seed => fleet(seed).Compute().Flags.Any(isCounted)) / (double)fleets;
}
