using FleetTrend.Reports.Weekly;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>The days that a report covers, by hand: New York is five hours behind UTC in November 2026, and 23 November is a Monday.</summary>
public class ReportPeriodsTests
{
    [Fact]
    public void A_scheduled_report_covers_the_seven_days_before_the_day_on_which_it_is_due()
    {
        var period = ReportPeriod.WeekBefore(new DateOnly(2026, 11, 23));
        Assert.Equal((new DateOnly(2026, 11, 16), new DateOnly(2026, 11, 22)), (period.Start, period.End));
    }

    [Fact]
    public void A_report_asked_for_covers_the_seven_days_that_end_there_today()
    {
        var period = ReportPeriod.EndingOn(DateTimeOffset.Parse("2026-11-26T04:00:00Z"), TimeZoneInfo.FindSystemTimeZoneById("America/New_York"));
        Assert.Equal((new DateOnly(2026, 11, 19), new DateOnly(2026, 11, 25)), (period.Start, period.End));
    }
}
