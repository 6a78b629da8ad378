using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Standings;

namespace FleetTrend.Trends.Tests;

public sealed class AirframeTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";

    // By hand: ten aircraft watched 1,000 h each at one weld; ZZ-00 has 9 cracks, the other nine 1 each. Expected for ZZ-00 at the rate
    // of the others: 9 / 9,000 h * 1,000 h = 1. Given 18 cracks in all, its count would be binomial with chance 1/10.
    private static TrendSnapshot Ten() => FleetBuilder.Compute(
        [.. Enumerable.Range(0, 10).Select(i => Cracked($"ZZ-{i:00}", i == 0 ? 9 : 1).Build())],
        new TrendParameters(), FleetBuilder.AsOf, "test");

    [Fact]
    public void Observed_against_what_the_others_rate_would_give()
    {
        var standing = Standing(Ten(), "ZZ-00");
        Assert.Equal((9, 9, 9), (standing.Observed, standing.OthersEvents, standing.OthersCount));
        Assert.Equal(1, standing.Expected, 12);
        Assert.Equal(9, standing.Ratio.Value!.Value, 12);
        Assert.Equal(1000, standing.ExposureHours);
        Assert.Equal(FleetBuilder.Start.AddDays(100), standing.SinceDate);
        Assert.Equal((Weld, 9, 1.0), (standing.Drivers[0].Location, standing.Drivers[0].Observed, Math.Round(standing.Drivers[0].Expected, 12)));
    }

    [Fact] // The binomial tail by its definition; the q-value of the smallest of ten is ten times it (Benjamini and Hochberg 1995).
    public void Chance_is_the_binomial_tail()
    {
        var p = Enumerable.Range(9, 10).Sum(k => Choose(18, k) * Math.Pow(0.1, k) * Math.Pow(0.9, 18 - k));
        var standing = Standing(Ten(), "ZZ-00");
        Assert.Equal(p, standing.PValue, 12);
        Assert.Equal(10 * p, standing.QValue, 12);
    }

    [Fact] // Clopper and Pearson 1934: at the limits the tail of the binomial with odds ratio * 1/9 is 0.025.
    public void Limits_of_the_ratio_leave_their_tails()
    {
        var ratio = Standing(Ten(), "ZZ-00").Ratio;
        Assert.Equal(0.025, Tail(ratio.Lower!.Value, k => k >= 9), 8);
        Assert.Equal(0.025, Tail(ratio.Upper!.Value, k => k <= 9), 8);

        static double Tail(double ratio, Func<int, bool> isCounted)
        {
            var chance = ratio / (ratio + 9);
            return Enumerable.Range(0, 19).Where(isCounted).Sum(k => Choose(18, k) * Math.Pow(chance, k) * Math.Pow(1 - chance, 18 - k));
        }
    }

    [Fact] // By hand: hours at two welds differ, so expected is 500 * 2/1000 + 2000 * 3/1000 = 7.
    public void Expected_is_summed_location_by_location()
    {
        var a = new FleetBuilder("ZZ-A").Watched("exhaust/a", "y-weld", 0, 500).Watched("exhaust/b", "y-weld", 0, 2000).Found("exhaust/b", "y-weld", 70);
        var b = new FleetBuilder("ZZ-B").Watched("exhaust/a", "y-weld", 0, 1000).Watched("exhaust/b", "y-weld", 0, 1000)
            .Found("exhaust/a", "y-weld", 70).Found("exhaust/a", "y-weld", 80, ordinal: 2)
            .Found("exhaust/b", "y-weld", 70).Found("exhaust/b", "y-weld", 80, ordinal: 2).Found("exhaust/b", "y-weld", 90, ordinal: 3);
        var snapshot = FleetBuilder.Compute([a.Build(), b.Build()], new TrendParameters(), FleetBuilder.AsOf, "test");
        Assert.Equal(7, Standing(snapshot, "ZZ-A").Expected, 12);
    }

    [Fact] // Zero events of the others: no finite ratio, but the lower limit of 3 of 3 on half the hours, 1/(0.025^(-1/3) - 1).
    public void Where_the_others_had_none_the_ratio_has_a_lower_limit_only()
    {
        var snapshot = FleetBuilder.Compute(
            [Cracked("ZZ-A", 3).Build(), Cracked("ZZ-B", 0).Build()], new TrendParameters(), FleetBuilder.AsOf, "test");
        var ratio = Standing(snapshot, "ZZ-A").Ratio;
        Assert.Null(ratio.Value);
        Assert.Null(ratio.Upper);
        Assert.Equal(1 / (Math.Pow(0.025, -1.0 / 3) - 1), ratio.Lower!.Value, 7);
        Assert.Equal(0.125, Standing(snapshot, "ZZ-A").PValue, 12);
    }

    [Fact]
    public void Groups_are_not_mixed()
    {
        var four = Enumerable.Range(0, 4).Select(i => Cracked($"ZZ-4{i}", 1).Build());
        var six = Enumerable.Range(0, 4).Select(i => Cracked($"ZZ-6{i}", 8, "six").Build());
        var snapshot = FleetBuilder.Compute([.. four, .. six], new TrendParameters(), FleetBuilder.AsOf, "test");
        Assert.All(snapshot.Standings, s => Assert.Equal(1, s.Ratio.Value!.Value, 12));
        Assert.DoesNotContain(snapshot.Flags, f => f.Kind == FlagKind.AirframeDrift);
    }

    [Fact]
    public void The_fleet_table_says_where_each_aircraft_stands()
    {
        var aircraft = Cracked("ZZ-A", 2, at: 500).Found(Weld, "y-weld", 700, Condition.Wear, open: true).Build(
            latest: new HoursOnDate(new DateOnly(2025, 12, 20), Hours.From(1043.5)),
            inspection: new HoursOnDate(new DateOnly(2025, 11, 1), Hours.From(1000)));
        var line = FleetBuilder.Compute([aircraft], new TrendParameters(), FleetBuilder.AsOf, "test").Fleet.Single();
        Assert.Equal((1043.5, 43.5), (line.LatestHours, line.HoursSinceInspection));
        // 700 days after 2024-01-01 is 2025-12-01, within 90 days of 2026-01-01; 500 and 600 days are not.
        Assert.Equal((1, 1), (line.RecentEvents, line.OpenEvents));
    }

    [Fact]
    public void An_aircraft_given_twice_is_refused() => Assert.Throws<ArgumentException>(() =>
        FleetBuilder.Compute([Cracked("ZZ-A", 1).Build(), Cracked("ZZ-A", 1).Build()], new TrendParameters(), FleetBuilder.AsOf, "test"));

    private static AirframeStanding Standing(TrendSnapshot snapshot, string registration) =>
        snapshot.Standings.Single(s => s.Registration == registration && s.Condition == Condition.Crack);

    private static FleetBuilder Cracked(string registration, int cracks, string group = "four", int at = 100)
    {
        var aircraft = new FleetBuilder(registration, typeGroup: group).Watched(Weld, "y-weld", 0, 1000);
        for (var k = 0; k < cracks; k++)
            aircraft.Found(Weld, "y-weld", at + (k * 100), ordinal: k + 1);
        return aircraft;
    }

    private static double Choose(int n, int k) => k == 0 ? 1 : Choose(n, k - 1) * (n - k + 1) / k;
}
