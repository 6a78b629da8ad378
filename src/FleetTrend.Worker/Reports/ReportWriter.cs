using FleetTrend.Hosting.Configuration;
using FleetTrend.Records.Schedules;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Results.Reporting;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Schedules;

namespace FleetTrend.Worker.Reports;

/// <summary>Makes reports, each saved once together with its mails. Who has been owed one gets no second mail.</summary>
public sealed class ReportWriter(
    TrendRefresh refresh,
    ResultReader results,
    ReportComposer composer,
    ReportStore reports,
    DueSchedules schedules,
    HostSettings settings,
    TimeProvider time,
    ILogger<ReportWriter> log)
{
    /// <summary>Computes the trends of now, from which reports are made.</summary>
    public async Task<ReportMaterial> ReadAsync(CancellationToken ct)
    {
        var asOf = await refresh.RunAsync(ct);
        return await composer.ReadAsync(await results.AtAsync(asOf, ct) ?? throw new InvalidOperationException($"Trends of {asOf:O} are not kept."), ct);
    }

    /// <summary>Makes the reports of a period that are not there yet, of every base and of the fleet, all as of one moment, and owes them to those who
    /// are in a schedule of the same scope that is not paused.</summary>
    public async Task WriteAsync(ReportPeriod period, CancellationToken ct)
    {
        var material = await ReadAsync(ct);
        foreach (var scope in material.Bases.Select(home => new ReportScope(home)).Append(ReportScope.WholeFleet))
        {
            var (scheduleIds, addresses) = await schedules.RecipientsOfAsync(scope, ct);
            await schedules.OwedAsync(scheduleIds, await WriteAsync(scope, period, addresses, () => Task.FromResult(material), ct), ct);
        }
    }

    /// <summary>Makes the report of a scope and period, unless it is there, and owes it to those of the recipients who have not been owed it.</summary>
    /// <param name="scope">What it is about.</param>
    /// <param name="period">The days that it covers.</param>
    /// <param name="recipients">Mail addresses.</param>
    /// <param name="material">What it is made from; asked for only where it has to be made.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Its identifier.</returns>
    public async Task<long> WriteAsync(
        ReportScope scope, ReportPeriod period, IReadOnlyList<string> recipients, Func<Task<ReportMaterial>> material, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(scope);
        ArgumentNullException.ThrowIfNull(period);
        ArgumentNullException.ThrowIfNull(material);
        if (await reports.FindAsync(scope, period.Start, period.End, ct) is { } there)
        {
            await reports.OweAsync(there, recipients, ct);
            return there;
        }

        var composed = await composer.ComposeAsync(await material(), scope, period, new Uri(settings.PublicUrl), settings.Notice, ct);
        var saved = await reports.SaveAsync(composed.ToStore, recipients, ct);
        if (saved.IsNew)
        {
            var took = time.GetUtcNow() - composed.ToStore.AsOf;
            WorkerLog.ReportWritten(log, scope.Title, period.Start, period.End, composed.Rendered.Subject, took.TotalSeconds);
        }

        return saved.ReportId;
    }
}
