using FleetTrend.Hosting.Configuration;
using FleetTrend.Worker.Jobs;
using Hangfire;

namespace FleetTrend.Worker.Schedules;

/// <summary>Which job runs when. Adding the same schedule from several workers is one schedule.</summary>
public static class RecurringSchedule
{
    /// <summary>Every ten seconds: the first field of this cron form is seconds.</summary>
    private const string EveryTenSeconds = "*/10 * * * * *";

    /// <summary>Old rows go after the nightly refresh, whose results then are the newest.</summary>
    private const int MinutesAfterRefresh = 30;

    /// <summary>Adds or updates the recurring jobs.</summary>
    public static void Apply(IRecurringJobManager jobs, ScheduleSettings schedule)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        ArgumentNullException.ThrowIfNull(schedule);
        var local = new RecurringJobOptions { TimeZone = schedule.TimeZone };
        var nightly = schedule.NightlyRefresh;
        jobs.AddOrUpdate<RefreshTrendsJob>(JobNames.RefreshWhenDue, job => job.RunWhenDueAsync(CancellationToken.None), EveryTenSeconds);
        jobs.AddOrUpdate<RefreshTrendsJob>(
            JobNames.RefreshNightly, job => job.RunAsync(CancellationToken.None), Cron.Daily(nightly.Hour, nightly.Minute), local);
        jobs.AddOrUpdate<WeeklyReportJob>(JobNames.WeeklyReport, job => job.RunAsync(CancellationToken.None), EveryTenSeconds);
        var removal = nightly.AddMinutes(MinutesAfterRefresh);
        jobs.AddOrUpdate<RemoveOldRowsJob>(
            JobNames.RemoveOldRows, job => job.RunAsync(CancellationToken.None), Cron.Daily(removal.Hour, removal.Minute), local);
        jobs.AddOrUpdate<RequestedReportsJob>(JobNames.RequestedReports, job => job.RunAsync(CancellationToken.None), EveryTenSeconds);
        jobs.AddOrUpdate<SendMailJob>(JobNames.SendMail, job => job.RunAsync(CancellationToken.None), EveryTenSeconds);
    }
}
