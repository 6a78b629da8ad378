using FleetTrend.Hosting.Configuration;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Starts refreshes of the trends: soon after records came in, and every night. Each type group that has changed is a job of its own.</summary>
public sealed class RefreshTrendsJob(
    RefreshRequests requests, StartedRefreshes started, TrendRefresh refresh, JobLock locks, ScheduleSettings schedule, IBackgroundJobClient jobs)
{
    /// <summary>However busy the intake is, trends are not older than this.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(15);

    /// <summary>A refresh that is not published by then ended with its processes, or is slow: another may start beside it.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>
    /// Starts one if somebody asked, or if records came in and none has for the configured delay. One whose worker was killed before all of
    /// its jobs were handed out gets them first. The next tick comes in seconds: no retry.
    /// </summary>
    [ShortLived]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunWhenDueAsync(CancellationToken ct)
    {
        await using var entered = await locks.TryEnterAsync(JobNames.RefreshWhenDue, ct);
        if (entered is null)
            return;

        // Nobody else is in, so that nobody is about to hand them out.
        foreach (var asOf in await started.NotHandedOutAsync(Patience, ct))
            await HandOutAsync(asOf, ct);
        if (await requests.DueAsync(schedule.RefreshDelay, schedule.LeastBetweenRefreshes, LongestWait, ct) && !await started.AnyAsync(Patience, ct))
            await HandOutAsync(null, ct);
    }

    /// <summary>Starts one in any case: hours since the last look grow even when no record comes in.</summary>
    public async Task RunAsync(CancellationToken ct)
    {
        await using var entered = await locks.EnterAsync(JobNames.RefreshWhenDue, ct);
        await HandOutAsync(null, ct);
    }

    // Of one that was started, or of a new one. A type group whose job is handed out twice is published once.
    private async Task HandOutAsync(DateTimeOffset? begun, CancellationToken ct)
    {
        try
        {
            var (asOf, typeGroups) = begun is { } known ? (known, (await started.ReadAsync(known, ct))?.Missing ?? []) : await refresh.StartAsync(ct);
            begun = asOf;
            if (typeGroups.Count == 0)
                await refresh.PublishAsync(asOf, ct);
            foreach (var typeGroup in typeGroups)
                jobs.Enqueue<RefreshTypeGroupJob>(job => job.RunAsync(asOf, typeGroup, CancellationToken.None));
            await started.HandedOutAsync(asOf, ct);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            await refresh.GiveUpAsync(begun, ct);
            throw;
        }
    }
}
