using FleetTrend.Records.Sources;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Retention;
using FleetTrend.Store.Snapshots;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>What nothing needs any more goes after its time; what a report is made again from, and every record, stays.</summary>
[Collection(SharedPostgres.Name)]
public sealed class OldRowsTests(PostgresFixture postgres)
{
    private static readonly RetentionLimits TwoDays = new(TimeSpan.FromDays(2), TimeSpan.FromDays(2), TimeSpan.FromDays(2));

    // By the clock of this machine, which is that of the test's database.
    private static readonly DateTimeOffset Now = DateTimeOffset.UtcNow;

    [Fact]
    public async Task Old_snapshots_go_but_for_the_newest_and_those_of_reports()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var snapshots = process.GetRequiredService<SnapshotStore>();
        var (ofReport, old, newest) = (Now.AddDays(-9), Now.AddDays(-8), Now.AddDays(-3));
        foreach (var asOf in new[] { ofReport, old, newest })
            await snapshots.SaveAsync(new StoredSnapshot { AsOf = asOf, CodeVersion = "t", ParametersJson = "{}", TrendsJson = "{}" }, default);
        await process.GetRequiredService<ReportStore>().SaveAsync(Report(await AsStoredAsync(store, "min(as_of)", "snapshots")), [], default);
        var rows = process.GetRequiredService<OldRows>();

        Assert.Equal(new RemovedRows(1, 0, 0, 0), await rows.RemoveAsync(TwoDays, default));
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from snapshots"));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from snapshots join reports using (as_of)"));
        Assert.Equal(new RemovedRows(0, 0, 0, 0), await rows.RemoveAsync(TwoDays, default));
    }

    [Fact]
    public async Task Old_mails_and_answered_requests_go_and_what_is_owed_stays_however_old()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await process.GetRequiredService<ReportStore>().SaveAsync(
            Report(Now), ["sent@shop.example", "given-up@shop.example", "owed@shop.example", "fresh@shop.example"], default);
        await ExecuteAsync(store, "update outbox_mails set owed_time = owed_time - interval '3 days'");
        await ExecuteAsync(store, "update outbox_mails set sent_time = clock_timestamp() - interval '3 days' where recipient like 'sent%'");
        await ExecuteAsync(store, "update outbox_mails set given_up_time = clock_timestamp() - interval '3 days', last_error = 'no' where recipient like 'given%'");
        await ExecuteAsync(store, "update outbox_mails set sent_time = clock_timestamp() - interval '1 day' where recipient like 'fresh%'");
        var requests = process.GetRequiredService<ReportRequests>();
        foreach (var id in new[] { "old", "open", "fresh" })
            await requests.AddAsync(id, new DateOnly(2026, 3, 2), new DateOnly(2026, 3, 8), write: true, default);
        await ExecuteAsync(store, "update report_requests set request_time = request_time - interval '9 days'");
        await ExecuteAsync(store, "update report_requests set done_time = clock_timestamp() - interval '3 days' where request_id = 'old'");
        await ExecuteAsync(store, "update report_requests set done_time = clock_timestamp() where request_id = 'fresh'");

        Assert.Equal(new RemovedRows(0, 2, 1, 0), await process.GetRequiredService<OldRows>().RemoveAsync(TwoDays, default));
        Assert.Equal(
            ["fresh@shop.example", "owed@shop.example"],
            (await process.GetRequiredService<OutboxStore>().ListAsync(null, 10, null, default)).Items.Select(m => m.Recipient).Order(StringComparer.Ordinal));
        Assert.Equal("fresh,open", await store.ScalarAsync<string>("select string_agg(request_id, ',' order by request_id) from report_requests"));
    }

    [Fact]
    public async Task The_copy_of_a_held_record_goes_after_it_was_accepted_and_the_record_stays()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var writer = process.GetRequiredService<RecordWriter>();
        var code = new SourceCode(Source, CodeKind.Location, "EX3");
        var released = Crack("released", "ZZ-A01");
        var retracted = Crack("retracted", "ZZ-A01");
        NewRecord Held(string id) => new NewRecord.ToHold(new RecordKey(StoreFixture.Source, id, 1), new HeldContent("ZZ-A01", [1], [code]), new byte[32]);
        await writer.SaveAsync([Held("released"), Held("retracted"), Held("waiting")], default);
        await writer.SaveAsync([Aircraft("ZZ-A01"), Retraction("retracted", 2)], default);
        await ExecuteAsync(store, "update held_records set content_hash = content_hash, release_time = clock_timestamp() - interval '3 days' "
            + "where source_record_id in ('released', 'retracted')");
        await writer.SaveAsync([released, retracted], default);
        var records = await store.ScalarAsync<long>("select count(*) from records");
        var alone = (await process.GetRequiredService<HistoryReader>().ReadAsync(Now.AddDays(1), default)).RetractionsAlone;

        Assert.Equal(new RemovedRows(0, 0, 0, 1), await process.GetRequiredService<OldRows>().RemoveAsync(TwoDays, default));

        Assert.Equal("retracted,waiting", await store.ScalarAsync<string>("select string_agg(source_record_id, ',' order by source_record_id) from held_records"));
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from held_codes"));
        Assert.Equal(records, await store.ScalarAsync<long>("select count(*) from records"));
        Assert.Equal(alone, (await process.GetRequiredService<HistoryReader>().ReadAsync(Now.AddDays(1), default)).RetractionsAlone);
    }

    [Fact]
    public async Task A_refresh_that_somebody_asks_for_is_due_at_once_and_one_for_records_after_the_quiet()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var requests = process.GetRequiredService<RefreshRequests>();
        var (hour, day) = (TimeSpan.FromHours(1), TimeSpan.FromDays(1));
        Assert.False(await requests.DueAsync(hour, day, default));
        await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);
        Assert.False(await requests.DueAsync(hour, day, default));

        var asked = (await requests.RequestAsync(write: true, default)).RequestTime;
        Assert.True(await requests.DueAsync(hour, day, default));

        await requests.DoneAsync(asked, default);
        Assert.False(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, default));
    }

    private static async Task<DateTimeOffset> AsStoredAsync(StoreFixture store, string column, string table) =>
        new(await store.ScalarAsync<DateTime>($"select {column} from {table}"));

    private static async Task ExecuteAsync(StoreFixture store, string statement)
    {
        await using var command = store.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }

    private static StoredReport Report(DateTimeOffset asOf) => new()
    {
        Base = "*",
        PeriodStart = new DateOnly(2026, 3, 2),
        PeriodEnd = new DateOnly(2026, 3, 8),
        AsOf = asOf,
        CodeVersion = "t",
        ParametersJson = "{}",
        Subject = "Synthetic",
        Text = "Synthetic",
        Html = "Synthetic",
        Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal),
        MessageIdSeed = "t",
    };
}
