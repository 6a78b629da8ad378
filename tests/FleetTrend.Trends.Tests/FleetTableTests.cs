using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Fleet;

namespace FleetTrend.Trends.Tests;

public sealed class FleetTableTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";

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
        Assert.Equal([new ConditionCount(Condition.Crack, 2), new ConditionCount(Condition.Wear, 1)], line.Events!);
    }

    [Fact]
    public void An_aircraft_given_twice_is_refused() => Assert.Throws<ArgumentException>(() =>
        FleetBuilder.Compute([Cracked("ZZ-A", 1).Build(), Cracked("ZZ-A", 1).Build()], new TrendParameters(), FleetBuilder.AsOf, "test"));

    private static FleetBuilder Cracked(string registration, int cracks, int at = 100)
    {
        var aircraft = new FleetBuilder(registration).Watched(Weld, "y-weld", 0, 1000);
        for (var k = 0; k < cracks; k++)
            aircraft.Found(Weld, "y-weld", at + (k * 100), ordinal: k + 1);
        return aircraft;
    }
}
