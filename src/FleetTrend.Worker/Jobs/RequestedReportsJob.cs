using FleetTrend.Reports.Weekly;
using FleetTrend.Store;
using FleetTrend.Store.Requests;
using FleetTrend.Worker.Reports;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Makes reports that somebody asked for outside the schedule.</summary>
public sealed class RequestedReportsJob(ReportRequests requests, ReportWriter reports, JobLock locks, ILogger<RequestedReportsJob> log)
{
    private const int MostAttempts = 5;
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);


    // The job's lock keeps other workers out while this one lives, however long it takes; after it was killed, they wait no longer than this.
    private static readonly TimeSpan Lease = TimeSpan.FromSeconds(10);

    /// <summary>Makes the reports of the period of each request. An attempt that fails is made again after a minute, five times in all.
    /// The next tick comes in seconds: no retry of the job.</summary>
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
            await AnswerAsync(request, ct);
        }
    }

    private async Task AnswerAsync(TakenReportRequest request, CancellationToken ct)
    {
        try
        {
            await reports.WriteAsync(new ReportPeriod(request.PeriodStart, request.PeriodEnd), ct);
            await requests.DoneAsync(request.RequestId, ct);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            // Whoever asked is told, and the others wait no longer for it.
            WorkerLog.RequestedReportFailed(log, request.RequestId, failure);
            await requests.FailedAsync(request.RequestId, $"The reports could not be made: {failure.Message}", Pause, MostAttempts, ct);
        }
    }
}
