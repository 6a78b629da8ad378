using FleetTrend.Hosting.Configuration;
using FleetTrend.Reports.Weekly;

namespace FleetTrend.Worker.Reports;

/// <summary>The seven days that a report covers, in the schedule's time zone.</summary>
public static class ReportPeriods
{
    private const int Days = 7;

    /// <summary>The seven days up to the day before the latest scheduled moment that is not after now.</summary>
    public static ReportPeriod LastComplete(DateTimeOffset now, ScheduleSettings schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var local = TimeZoneInfo.ConvertTime(now, schedule.TimeZone);
        var today = DateOnly.FromDateTime(local.DateTime);
        var back = ((int)today.DayOfWeek - (int)schedule.WeeklyReport.Day + Days) % Days;
        if (back == 0 && TimeOnly.FromDateTime(local.DateTime) < schedule.WeeklyReport.Time)
        {
            back = Days;
        }

        var last = today.AddDays(-back - 1);
        return new ReportPeriod(last.AddDays(1 - Days), last);
    }
}
