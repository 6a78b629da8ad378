using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Reports;
using FleetTrend.Worker.Reports;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Reports;

[Collection(SharedPostgres.Name)]
public class ReportWriterTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_report_asked_for_early_on_the_scheduled_day_does_not_stand_in_for_the_weekly_one()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var writer = ActivatorUtilities.CreateInstance<ReportWriter>(
            server.Services, ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services));
        var asked = new ReportPeriod(new DateOnly(2026, 11, 17), new DateOnly(2026, 11, 23));
        var weekly = new ReportPeriod(new DateOnly(2026, 11, 16), new DateOnly(2026, 11, 22));

        await writer.WriteAsync(asked, CancellationToken.None);
        await writer.WriteAsync(weekly, CancellationToken.None);
        await writer.WriteAsync(weekly, CancellationToken.None);
        await writer.WriteAsync(asked, CancellationToken.None);

        var reports = (await server.Services.GetRequiredService<ReportStore>().ListAsync(ReportScope.WholeFleet, 10, null, CancellationToken.None)).Items;
        Assert.Equal(
            [(weekly.Start, weekly.End), (asked.Start, asked.End)],
            reports.Select(r => (r.PeriodStart, r.PeriodEnd)));
    }
}
