using FleetTrend.Hosting.Configuration;
using FleetTrend.Store;
using FleetTrend.Store.Requests;
using FleetTrend.Worker.Reports;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Makes reports that somebody asked for outside the schedule.</summary>
public sealed class RequestedReportsJob(ReportRequests requests, ReportWriter reports, JobLock locks, ScheduleSettings schedule)
{
    // The job's lock keeps other workers out while this one lives, however long it takes; after it was killed, they wait no longer than this.
    private static readonly TimeSpan Lease = TimeSpan.FromSeconds(10);

    /// <summary>Makes the reports of the seven days that end on the day of each request. The next tick comes in seconds: no retry.</summary>
    [ShortLived]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunAsync(CancellationToken ct)
    {
        await using var entered = await locks.TryEnterAsync(JobNames.RequestedReports, ct);
        if (entered is null)
        {
            return;
        }

        while (await requests.TakeAsync(Lease, ct) is { } request)
        {
            await reports.WriteAsync(ReportPeriods.EndingOn(request.RequestTime, schedule), ct);
            await requests.DoneAsync(request.RequestId, ct);
        }
    }
}
