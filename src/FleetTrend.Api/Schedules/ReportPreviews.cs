using FleetTrend.Hosting.Configuration;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Reporting;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Schedules;

namespace FleetTrend.Api.Schedules;

/// <summary>Shows what a schedule would send now. Nothing is sent and nothing is stored.</summary>
internal sealed class ReportPreviews(
    ScheduleStore schedules, ReportStore reports, ResultReader results, ReportComposer composer, HostSettings settings, TimeProvider clock)
{
    /// <summary>The report of the last complete period: as it is stored, or else put together from the latest trends; null where there are none.</summary>
    public async Task<ReportPreview?> ReadAsync(ReportSchedule schedule, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var zone = TimeZoneInfo.FindSystemTimeZoneById(schedule.TimeZone);
        var period = ReportPeriod.WeekBefore(schedule.Slot.LatestAt(clock.GetUtcNow(), zone).Date);
        if (await reports.FindAsync(schedule.Scope, period.Start, period.End, ct) is { } id)
        {
            var states = await schedules.DeliveriesAsync(schedule with { LastReportId = id }, ct);
            return new ReportPreview((await reports.GetAsync(id, ct))!, [.. states.Where(s => !s.WasOwed).Select(s => s.Address)]);
        }

        if (await results.LatestAsync(ct) is not { } published)
            return null;
        var material = await composer.ReadAsync(published, ct);
        var composed = await composer.ComposeAsync(material, schedule.Scope, period, new Uri(settings.PublicUrl), settings.Notice, ct);
        return new ReportPreview(composed.ToStore, schedule.Recipients);
    }
}
