using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Store;
using FleetTrend.Store.Reports;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>A database whose trends were one document each is brought to results as rows.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ResultsAsRowsTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset OfReport = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset OfNone = OfReport.AddDays(1);

    [Fact]
    public async Task A_report_keeps_the_parameters_of_its_moment_and_other_moments_go()
    {
        await using var database = await postgres.CreateDatabaseAsync();
        await using var services = new ServiceCollection()
            .AddLogging().AddFleetTrendStore(database.ConnectionString).AddFleetTrendResults().BuildServiceProvider();
        await using (var context = await services.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync())
            await context.GetService<IMigrator>().MigrateAsync("ReportDocuments");
        await using (var command = database.DataSource.CreateCommand(
            """
            insert into snapshots (as_of, code_version, parameters_json, trends_json)
            values ($1, '0.1.0', '{"confidence":0.9,"minimumFailuresForFit":4}', '{}'), ($2, '0.1.0', '{"confidence":0.8}', '{}');
            """))
        {
            command.Parameters.Add(new() { Value = OfReport });
            command.Parameters.Add(new() { Value = OfNone });
            await command.ExecuteNonQueryAsync();
        }

        await using (var command = database.DataSource.CreateCommand(
            """
            insert into reports (base, period_start_date, period_end_date, as_of, code_version, parameters_json, subject, text, html, message_id_seed)
            values ('*', '2026-02-23', '2026-03-01', $1, '0.1.0', '{"confidence":0.9,"minimumFailuresForFit":4}', 'News', 'text', '<p>text</p>', 'seed')
            """))
        {
            command.Parameters.Add(new() { Value = OfReport });
            await command.ExecuteNonQueryAsync();
        }

        await StoreSchema.MigrateAsync(services, default);

        var reader = services.GetRequiredService<ResultReader>();
        var parameters = await reader.ParametersAtAsync(OfReport, default);
        Assert.Equal((0.9, 4), (parameters!.Confidence, parameters.MinimumFailuresForFit));
        Assert.Null(await reader.ParametersAtAsync(OfNone, default));
        Assert.Null(await reader.AtAsync(OfReport, default)); // its results are computed again
        Assert.Equal("News", Assert.Single((await services.GetRequiredService<ReportStore>().ListAsync(null, 10, null, default)).Items).Subject);
    }
}
