using FleetTrend.Records;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests;

public sealed class HoursByDayTests
{
    [Theory] // By hand: 100 h on day 10, 130 h on day 20, so 3 h a day between; 130 h still on day 25; 150 h on day 30.
    [InlineData(0, 100)]
    [InlineData(10, 100)]
    [InlineData(11, 103)]
    [InlineData(19, 127)]
    [InlineData(20, 130)]
    [InlineData(23, 130)]
    [InlineData(25, 130)]
    [InlineData(28, 142)]
    [InlineData(30, 150)]
    [InlineData(99, 150)]
    public void Between_known_days_hours_lie_on_the_line_and_outside_they_stand(int day, double hours)
    {
        var aircraft = new InventedAircraft().Good(10, 100, Weld).Good(20, 130, Weld).Read(25, 130).Good(30, 150, Weld).Observe();
        Assert.Equal(Hours.From(hours), aircraft.Hours.On(Day(day)));
        Assert.Equal(aircraft.Latest, aircraft.Hours.Latest);
    }

    [Fact]
    public void Where_nothing_is_known_there_are_none()
    {
        var hours = new InventedAircraft().Observe().Hours;
        Assert.Null(hours.On(Day(1)));
        Assert.Null(hours.Latest);
    }
}
