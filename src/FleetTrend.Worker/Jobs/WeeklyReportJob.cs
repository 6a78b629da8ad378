using FleetTrend.Hosting.Configuration;
using FleetTrend.Records.Schedules;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reporting;
using FleetTrend.Store;
using FleetTrend.Store.Schedules;
using FleetTrend.Worker.Reports;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Makes the reports of the schedules that are due, or that somebody wants sent now, and owes their mails. Run again, it adds nothing.</summary>
public sealed class WeeklyReportJob(
    DueSchedules schedules, ReportWriter reports, JobLock locks, ScheduleSettings settings, TimeProvider time, ILogger<WeeklyReportJob> log)
{
    private const int DaysOfWeek = 7;
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Late = TimeSpan.FromMinutes(5);

    /// <summary>
    /// Makes what is due, all as of one moment. Where no worker ran at a due moment, its report is made late, once; of several that were missed, the
    /// newest. One that fails is tried again after a minute, and keeps no other back. The next tick comes in seconds: no retry of the job.
    /// </summary>
    [ShortLived]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunAsync(CancellationToken ct)
    {
        await using var entered = await locks.TryEnterAsync(JobNames.WeeklyReport, ct);
        if (entered is null)
            return;
        var now = time.GetUtcNow();
        await schedules.PrepareAsync(new ShippedSlot(settings.WeeklyReport, settings.TimeZone), now, ct);
        Task<ReportMaterial>? material = null;
        foreach (var schedule in await schedules.ReadAsync(now, ct))
        {
            try
            {
                await AnswerAsync(schedule, now, () => material ??= reports.ReadAsync(ct), ct);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                WorkerLog.ScheduleFailed(log, schedule.Name, Pause.TotalSeconds, failure);
                await schedules.FailedAsync(schedule.ScheduleId, $"The report could not be made: {failure.Message}", now + Pause, ct);
            }
        }
    }

    private async Task AnswerAsync(ReportSchedule schedule, DateTimeOffset now, Func<Task<ReportMaterial>> material, CancellationToken ct)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(schedule.TimeZone);
        var latest = schedule.Slot.LatestAt(now, zone);
        var isDue = !schedule.IsPaused && schedule.NextDueTime <= now;
        if (schedule.SendAskedTime is not null || await FliesAsync(schedule.Scope, material))
        {
            var reportId = await reports.WriteAsync(schedule.Scope, ReportPeriod.WeekBefore(latest.Date), schedule.Recipients, material, ct);
            await schedules.OwedAsync([schedule.ScheduleId], reportId, ct);
        }

        await schedules.DoneAsync(schedule, isDue ? latest : null, schedule.Slot.NextAfter(now, zone), now, ct);
        if (isDue && now - schedule.NextDueTime >= Late)
        {
            var missed = (latest.Time - schedule.NextDueTime!.Value).Days / DaysOfWeek;
            WorkerLog.ScheduleLate(log, schedule.Name, latest.Time, (now - latest.Time).TotalMinutes, missed);
        }
    }

    /// <summary>A base or type group of which no aircraft flies any more gets no report, unless somebody asks for it.</summary>
    private static async Task<bool> FliesAsync(ReportScope scope, Func<Task<ReportMaterial>> material) =>
        scope.IsWholeFleet
        || (await material()).Current.Fleet.Any(l => l.RetiredDate is null && scope.Covers(l.Base) && (scope.TypeGroup ?? l.TypeGroup) == l.TypeGroup);
}
