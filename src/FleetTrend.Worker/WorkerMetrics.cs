using System.Diagnostics.Metrics;
using FleetTrend.Store.Retention;

namespace FleetTrend.Worker;

/// <summary>What the worker counts; deploy/README.md says what to watch.</summary>
public sealed class WorkerMetrics
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "FleetTrend.Worker";

    private readonly Counter<long> sent;
    private readonly Counter<long> failed;
    private readonly Counter<long> givenUp;
    private readonly Counter<long> removed;
    private readonly Histogram<double> refreshes;

    /// <summary>Makes the instruments.</summary>
    public WorkerMetrics(IMeterFactory meters)
    {
        ArgumentNullException.ThrowIfNull(meters);
        var meter = meters.Create(MeterName);
        sent = meter.CreateCounter<long>("fleettrend.mails.sent", "{mail}", "Mails that the mail server took.");
        failed = meter.CreateCounter<long>("fleettrend.mails.failed", "{attempt}", "Attempts that failed and will be repeated.");
        givenUp = meter.CreateCounter<long>("fleettrend.mails.given_up", "{mail}", "Mails refused for good, or not taken for too long.");
        removed = meter.CreateCounter<long>("fleettrend.rows.removed", "{row}", "Old rows that were removed, by table.");
        refreshes = meter.CreateHistogram<double>("fleettrend.trends.refresh.duration", "s", "How long computing and storing the trends took.");
    }

    internal void MailSent() => sent.Add(1);

    internal void MailFailed() => failed.Add(1);

    internal void MailGivenUp() => givenUp.Add(1);

    internal void Refreshed(TimeSpan elapsed) => refreshes.Record(elapsed.TotalSeconds);

    internal void RowsRemoved(RemovedRows removed)
    {
        foreach (var (table, count) in new[]
        {
            ("trends", removed.Trends), ("outbox_mails", removed.Mails), ("report_requests", removed.ReportRequests), ("held_records", removed.HeldRecords),
        })
        {
            this.removed.Add(count, new KeyValuePair<string, object?>("table", table));
        }
    }
}
