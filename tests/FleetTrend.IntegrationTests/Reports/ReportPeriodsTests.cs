using FleetTrend.Hosting.Configuration;
using FleetTrend.Reports.Weekly;
using FleetTrend.Worker.Reports;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>By hand: 23 November 2026 is a Monday. New York is five hours behind UTC then, so its 06:00 is 11:00 UTC.</summary>
public class ReportPeriodsTests
{
    private static readonly ScheduleSettings Mondays = new()
    {
        TimeZone = TimeZoneInfo.FindSystemTimeZoneById("America/New_York"),
        WeeklyReport = new WeeklySlot(DayOfWeek.Monday, new TimeOnly(6, 0)),
    };

    [Theory]
    [InlineData("2026-11-23T10:59:59Z", "2026-11-09", "2026-11-15")] // a second before the hour: still the week before
    [InlineData("2026-11-23T11:00:00Z", "2026-11-16", "2026-11-22")]
    [InlineData("2026-11-25T12:00:00Z", "2026-11-16", "2026-11-22")] // a late worker makes the week that was due
    [InlineData("2026-11-30T04:59:00Z", "2026-11-16", "2026-11-22")] // Monday in UTC, still Sunday there
    public void The_scheduled_report_covers_the_week_before_the_latest_scheduled_moment(string now, string start, string end)
    {
        var period = ReportPeriods.LastComplete(DateTimeOffset.Parse(now), Mondays);
        Assert.Equal((DateOnly.Parse(start), DateOnly.Parse(end)), (period.Start, period.End));
    }

    [Fact]
    public void A_report_asked_for_covers_the_seven_days_that_end_there_today()
    {
        var period = ReportPeriod.EndingOn(DateTimeOffset.Parse("2026-11-26T04:00:00Z"), Mondays.TimeZone);
        Assert.Equal((new DateOnly(2026, 11, 19), new DateOnly(2026, 11, 25)), (period.Start, period.End));
    }
}
