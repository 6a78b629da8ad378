using FleetTrend.Store;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Schedules;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Schedules;

/// <summary>An upgrade from recipients by base to schedules: nobody loses a mail, and nobody gets one twice.</summary>
[Collection(SharedPostgres.Name)]
public sealed class CarriedOverTests(PostgresFixture postgres)
{
    private static readonly ShippedSlot Mondays = new(new WeeklySlot(DayOfWeek.Monday, new TimeOnly(6, 0)), TimeZoneInfo.Utc);

    [Fact]
    public async Task Recipients_become_those_of_the_shipped_schedules_and_what_was_due_meanwhile_is_made_late()
    {
        await using var database = await postgres.CreateDatabaseAsync();
        await using var services = new ServiceCollection().AddLogging().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider();
        await using (var context = await services.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync())
            await context.GetService<IMigrator>().MigrateAsync("KeptForecasts");
        await using (var command = database.DataSource.CreateCommand(
            """
            insert into recipients (base, address) values ('*', 'director@shop.example'), ('North', 'a@shop.example'), ('North', 'b@shop.example');
            insert into reports (base, period_start_date, period_end_date, as_of, code_version, parameters_json, subject, text, html, message_id_seed)
            values ('*', '2026-02-16', '2026-02-22', '2026-02-23T06:00:00Z', '0.1.0', '{}', 'News', 'text', '<p>text</p>', 'seed');
            insert into outbox_mails (report_id, recipient, message_id, attempt_count, next_attempt_time, sent_time)
            select id, 'Director@shop.example', 'm', 1, now(), now() from reports;
            """))
        {
            await command.ExecuteNonQueryAsync();
        }

        await StoreSchema.MigrateAsync(services, default);
        var store = services.GetRequiredService<ScheduleStore>();
        var due = services.GetRequiredService<DueSchedules>();
        // The server was down for its upgrade on Monday 2 March at 06:00.
        var now = new DateTimeOffset(2026, 3, 2, 6, 20, 0, TimeSpan.Zero);
        await due.PrepareAsync(Mondays, now, default);
        await due.PrepareAsync(Mondays, now.AddSeconds(10), default);

        var carried = await store.ListAsync(default);
        Assert.Equal(
            [("Whole fleet", "director@shop.example"), ("Base North", "a@shop.example b@shop.example")],
            carried.Select(s => (s.Name, string.Join(' ', s.Recipients))));
        Assert.All(carried, s => Assert.True(s.FollowsSettings));
        Assert.Equal(now.AddMinutes(-20), carried[0].NextDueTime); // had reports, and lacks this one
        Assert.Equal(now.AddMinutes(-20).AddDays(7), carried[1].NextDueTime); // had none
        Assert.Equal(["Whole fleet"], (await due.ReadAsync(now, default)).Select(s => s.Name));

        var reports = services.GetRequiredService<ReportStore>();
        await reports.OweAsync(carried[0].LastReportId!.Value, carried[0].Recipients, default);
        await using var count = database.DataSource.CreateCommand("select count(*) from outbox_mails");
        Assert.Equal(1L, await count.ExecuteScalarAsync()); // it was mailed before
    }
}
