using FleetTrend.Statistics.Rates;
using FleetTrend.Trends.LocationStandings;

namespace FleetTrend.Trends.Tests;

/// <summary>
/// Simulated fleets of 60 aircraft with 24 welds each (fixed seeds), 800 to 1,900 h watched: some years of a school. In an
/// ordinary one some weld comes back twice or more by chance in nearly every fleet; that alone must have no small q-value.
/// </summary>
public sealed class PlaceFalseCallTests
{
    private const double Level = 0.05;
    private const string BadWeld = "exhaust/cyl-0/flange-weld";

    // With no trouble anywhere a false discovery is any place with a q-value up to the level, so that the share of fleets with one is at most that
    // (Benjamini and Hochberg 1995). The bound is the exact upper limit of the share, one-sided
    // at 95 % (Clopper and Pearson 1934). Two returns without a test, the rule before, would have called most fleets.
    [Theory]
    [InlineData(0.0005, 3, 200, 0.9)]
    [InlineData(0.00005, 1, 300, 0.05)]
    public void An_ordinary_fleet_is_called_in_no_more_than_the_stated_share(double crackRate, double spread, int fleets, double returnsInAtLeast)
    {
        var runs = Enumerable.Range(0, fleets)
            .Select(seed => (Ordinary(seed) with { CrackRate = crackRate, WeldSpread = spread }).Settle(Analyses.LocationStandings))
            .Select(s => (HasPlace: s.Any(StandsOut), HasReturns: s.Any(l => l.Returns >= 2)))
            .ToList();
        Assert.InRange(ClopperPearsonInterval.UpperLimit(runs.Count(r => r.HasPlace), fleets), 0, Level);
        Assert.InRange(runs.Count(r => r.HasReturns), returnsInAtLeast * fleets, fleets);
    }

    [Fact] // One weld at twenty times the rate of its like: some 13 cracks where 0.7 come by chance.
    public void One_bad_weld_on_an_ordinary_airframe_stands_out() =>
        Assert.InRange(
            Enumerable.Range(0, 60).Count(seed => (Ordinary(seed) with { TroubleFactor = 20 }).Settle(Analyses.LocationStandings)
                .Any(l => l.Registration == "ZZ-000" && l.Location == BadWeld && StandsOut(l))),
            54, 60);

    private static bool StandsOut(LocationStanding standing) => standing.QValue <= Level && standing.Observed > standing.Expected.Value;

    private static SimulatedFleet Ordinary(int seed) => new() { Seed = seed, Aircraft = 60, Welds = 24, Gaskets = 0 };
}
