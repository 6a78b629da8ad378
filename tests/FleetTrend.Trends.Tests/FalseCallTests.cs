namespace FleetTrend.Trends.Tests;

/// <summary>
/// Simulated fleets with known truth (fixed seeds): at one look, bases of an ordinary fleet are called seldom, planted trouble is called. What gets
/// worse is in ChangeTests and, over years of looking again, in CALLS.md.
/// </summary>
public sealed class FalseCallTests
{
    private const int Fleets = 300;

    // With no trouble anywhere a false discovery is any call at all, so 5 % of fleets at most may have one (Benjamini and Hochberg 1995).
    // Three binomial standard errors of 300 fleets: 3 * sqrt(.05 * .95 / 300) = 0.038.
    private const double Most = 0.05 + 0.038;

    [Fact]
    public void A_base_of_an_ordinary_fleet_is_seldom_called() =>
        Assert.InRange(Share(seed => new SimulatedFleet { Seed = seed, Welds = 0 }), 0, Most);

    [Fact] // Parts of one aircraft share its hazard. The test of parts as independent called some 26 % of such fleets.
    public void A_base_of_aircraft_that_differ_is_seldom_called() =>
        Assert.InRange(Share(seed => new SimulatedFleet { Seed = seed, Welds = 0, AircraftSpread = 0.5 }), 0, Most);

    [Fact] // A handful of failures a base.
    public void A_base_with_few_failures_is_seldom_called() =>
        Assert.InRange(Share(seed => new SimulatedFleet { Seed = seed, Welds = 0, Gaskets = 1, Aircraft = 12, GasketScale = 1200 }), 0, Most);

    [Fact] // Gaskets at the second base last half as long.
    public void A_base_with_short_gasket_life_is_called_and_not_the_other() =>
        Assert.All(Enumerable.Range(0, 20), seed =>
            Assert.Equal(["south"], Called(new SimulatedFleet { Seed = seed, Welds = 0, SouthLifeFactor = 0.5 })));

    private static double Share(Func<int, SimulatedFleet> fleet) => Enumerable.Range(0, Fleets).Count(seed => Called(fleet(seed)).Count > 0) / (double)Fleets;

    private static IReadOnlyList<string?> Called(SimulatedFleet fleet) =>
        [.. fleet.Settle(Analyses.PartLives).Where(t => t.Contrast is { IsWorse: true }).Select(t => t.Base)];
}
