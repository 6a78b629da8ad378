using System.Diagnostics;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store;
using FleetTrend.Store.Requests;
using FleetTrend.Worker.Trends;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Computes trends: soon after records came in, and every night.</summary>
public sealed class RefreshTrendsJob(RefreshRequests requests, TrendRefresh refresh, JobLock locks, ScheduleSettings schedule, WorkerMetrics metrics)
{
    /// <summary>However busy the intake is, trends are not older than this.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(15);

    /// <summary>Refreshes if somebody asked, or if records came in and none has for the configured delay. The next tick comes in seconds: no retry.</summary>
    [ShortLived]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunWhenDueAsync(CancellationToken ct)
    {
        await using var entered = await locks.TryEnterAsync(JobNames.RefreshWhenDue, ct);
        if (entered is not null && await requests.DueAsync(schedule.RefreshDelay, LongestWait, ct))
        {
            await RunAsync(ct);
        }
    }

    /// <summary>Refreshes in any case: hours since the last look grow even when no record comes in.</summary>
    public async Task RunAsync(CancellationToken ct)
    {
        var started = Stopwatch.GetTimestamp();
        try
        {
            await refresh.RunAsync(ct);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            await requests.FailedAsync(ct);
            throw;
        }

        metrics.Refreshed(Stopwatch.GetElapsedTime(started));
    }
}
