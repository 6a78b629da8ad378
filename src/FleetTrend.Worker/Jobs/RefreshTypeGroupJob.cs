using FleetTrend.Results.Refreshes;
using Hangfire;

namespace FleetTrend.Worker.Jobs;

/// <summary>Computes one type group of a refresh; whoever computes the last one publishes it.</summary>
public sealed class RefreshTypeGroupJob(TrendRefresh refresh, TimeProvider time, WorkerMetrics metrics)
{
    /// <summary>Computes it. What fails gives the refresh up, and the next tick starts another: no retry.</summary>
    /// <param name="asOf">The moment of the refresh.</param>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="ct">Cancels.</param>
    [ShortLived]
    [Queue(JobNames.TrendQueue)]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunAsync(DateTimeOffset asOf, string typeGroup, CancellationToken ct)
    {
        try
        {
            if (!await refresh.ComputeAsync(asOf, typeGroup, ct))
                return;
            await refresh.PublishAsync(asOf, ct);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            await refresh.GiveUpAsync(asOf, ct);
            throw;
        }

        metrics.Refreshed(time.GetUtcNow() - asOf);
    }
}
