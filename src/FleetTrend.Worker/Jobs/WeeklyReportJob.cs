using FleetTrend.Hosting.Configuration;
using FleetTrend.Worker.Reports;

namespace FleetTrend.Worker.Jobs;

/// <summary>Makes the weekly report of every base and of the fleet, and owes its mails. Run again, it adds nothing.</summary>
public sealed class WeeklyReportJob(ReportWriter reports, ScheduleSettings schedule, TimeProvider time)
{
    /// <summary>Makes the reports of the seven days before the latest scheduled day.</summary>
    public async Task RunAsync(CancellationToken ct) =>
        await reports.WriteAsync(ReportPeriods.LastComplete(time.GetUtcNow(), schedule), ct);
}
