using FleetTrend.Hosting.Configuration;
using FleetTrend.Store.Retention;

namespace FleetTrend.Worker.Jobs;

/// <summary>Removes rows that nothing needs any more, so that the database does not grow for ever. Run again, it removes nothing.</summary>
public sealed class RemoveOldRowsJob(OldRows rows, RetentionSettings retention, WorkerMetrics metrics, ILogger<RemoveOldRowsJob> log)
{
    /// <summary>Removes what is older than the settings say.</summary>
    public async Task RunAsync(CancellationToken ct)
    {
        var removed = await rows.RemoveAsync(new RetentionLimits(retention.Snapshots, retention.Mails, retention.Answered), ct);
        metrics.RowsRemoved(removed);
        WorkerLog.OldRowsRemoved(log, removed.Trends, removed.Mails, removed.ReportRequests, removed.HeldRecords);
    }
}
