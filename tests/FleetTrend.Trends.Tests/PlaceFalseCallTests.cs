using FleetTrend.Statistics.Rates;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Trends.Tests;

/// <summary>
/// Simulated fleets of 60 aircraft with 24 welds each (fixed seeds), 800 to 1,900 h watched: some years of a school. In an
/// ordinary one some weld comes back twice or more by chance in nearly every fleet; that alone must raise nothing.
/// </summary>
public sealed class PlaceFalseCallTests
{
    private const double Level = 0.05;
    private const string BadWeld = "exhaust/cyl-0/flange-weld";

    // With no trouble anywhere a false discovery is any flag at all, so that the share of fleets with one is at most the level of a
    // family (Benjamini and Hochberg 1995); drifts and places are two. The bound is the exact upper limit of the share, one-sided
    // at 95 % (Clopper and Pearson 1934). Two returns without a test, the rule before, would have called most fleets.
    [Theory]
    [InlineData(0.0005, 3, 200, 0.9)]
    [InlineData(0.00005, 1, 300, 0.05)]
    public void An_ordinary_fleet_is_called_in_no_more_than_the_stated_share(double crackRate, double spread, int fleets, double returnsInAtLeast)
    {
        var runs = Enumerable.Range(0, fleets)
            .Select(seed => (Ordinary(seed) with { CrackRate = crackRate, WeldSpread = spread }).Compute())
            .Select(s => (
                HasPlace: s.Flags.Any(f => f.Kind == FlagKind.RepeatLocation),
                HasAny: s.Flags.Count > 0,
                HasReturns: s.Repeats.Any(r => r.Events.Count(e => e.FoundHours > r.Events[0].FoundHours) >= 2)))
            .ToList();
        Assert.InRange(ClopperPearsonInterval.UpperLimit(runs.Count(r => r.HasPlace), fleets), 0, Level);
        Assert.InRange(ClopperPearsonInterval.UpperLimit(runs.Count(r => r.HasAny), fleets), 0, 2 * Level);
        Assert.InRange(runs.Count(r => r.HasReturns), returnsInAtLeast * fleets, fleets);
    }

    // One weld at twenty times the rate of its like: some 13 cracks where 0.7 come by chance, which on the airframe are 29 where 16 come.
    // Where the airframe is no drift the place is flagged by itself.
    [Fact]
    public void One_bad_weld_on_an_ordinary_airframe_is_found()
    {
        var calls = Enumerable.Range(0, 60)
            .Select(seed => (Ordinary(seed) with { TroubleFactor = 20 }).Compute().Flags.Where(f => f.Registration == "ZZ-000" && f.Locations[0] == BadWeld).ToList())
            .ToList();
        Assert.InRange(calls.Count(flags => flags.Count > 0), 54, 60);
        Assert.InRange(calls.Count(flags => flags.Any(f => f.Kind == FlagKind.RepeatLocation)), 25, 60);
    }

    private static SimulatedFleet Ordinary(int seed) => new() { Seed = seed, Aircraft = 60, Welds = 24, Gaskets = 0 };
}
