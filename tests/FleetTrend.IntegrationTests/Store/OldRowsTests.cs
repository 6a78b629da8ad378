using FleetTrend.Records.Sources;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Store.Retention;
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
    public async Task Of_trends_the_newest_stays_whole_a_week_keeps_its_headlines_and_a_report_its_parameters()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var monday = new DateTimeOffset(Now.UtcDateTime.Date.AddDays(-(int)Now.DayOfWeek - 20), TimeSpan.Zero); // of a week that is over
        var (ofReport, middle, lastOfWeek, newest) = (monday.AddDays(-21), monday.AddDays(1), monday.AddDays(2), Now.AddHours(-1));
        foreach (var asOf in new[] { ofReport, middle, lastOfWeek, newest })
            await PublishAsync(process.GetRequiredService<ResultStore>(), asOf);
        await process.GetRequiredService<ReportStore>().SaveAsync(Report(await AsStoredAsync(store, "min(as_of)", "trends")), [], default);
        var rows = process.GetRequiredService<OldRows>();
        var limits = TwoDays with { Headlines = TimeSpan.FromDays(35) };

        Assert.NotEqual(0, (await rows.RemoveAsync(limits, default)).Trends);
        // The report's is older than the limit: its parameters stay. Of the week, the last one's headline stays. The newest stays whole.
        Assert.Equal("False 0;False 1;True 1", await ShapeAsync(store));
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from result_sets"));
        Assert.Equal(3L, await store.ScalarAsync<long>("select count(*) from results")); // two of the newest, one headline
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from results where detail is not null"));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from results where detail is null and labels = '{Crack}' and event_counts = '{7}'"));
        Assert.Equal(0, (await rows.RemoveAsync(limits, default)).Trends);
        Assert.Equal("False 0;False 1;True 1", await ShapeAsync(store));
    }

    [Fact] // Every refresh does so, or a day of them would pile up.
    public async Task What_a_newer_moment_has_replaced_goes_and_what_a_started_refresh_will_publish_stays()
    {
        await using var store = await CreateAsync(postgres);
        var results = store.StartProcess().GetRequiredService<ResultStore>();
        foreach (var minutes in new[] { 80, 70, 60, 0 })
            await PublishAsync(results, Now.AddMinutes(-minutes));
        await results.AddSetAsync(Now.AddMinutes(-50), "four", "{}", [], default);
        await ExecuteAsync(store, "insert into started_refreshes (as_of, type_group) select as_of, 'four' from result_sets where summary_json::text = '{}'");

        await results.ThinAsync(default);

        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from trends where is_whole"));
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from results where detail is not null"));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from result_sets where as_of in (select as_of from started_refreshes)"));
    }

    private static async Task PublishAsync(ResultStore results, DateTimeOffset asOf)
    {
        var setId = await results.AddSetAsync(
            asOf, "four", """{"kept":1}""",
            [
                new NewResult("rates", null, "exhaust/x", "weld", null, 1, [new StoredHeadline("Crack", 1.5f, 1, 2, 7)], "[1]"u8.ToArray()),
                new NewResult("fleet-lines", "N-1", null, null, null, 1, [], "[1]"u8.ToArray()),
            ],
            default);
        await results.PublishAsync(
            new PublishedTrends { AsOf = asOf, CodeVersion = "t", ParametersJson = "{}", SetIds = [setId], FleetJson = "{}" }, default);
    }

    private static Task<string> ShapeAsync(StoreFixture store) => store.ScalarAsync<string>(
        "select string_agg(initcap(is_whole::text) || ' ' || cardinality(set_ids), ';' order by as_of) from trends");

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
        Assert.False(await requests.DueAsync(hour, TimeSpan.Zero, day, default));
        await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);
        Assert.False(await requests.DueAsync(hour, TimeSpan.Zero, day, default));

        var asked = (await requests.RequestAsync(write: true, default)).RequestTime;
        Assert.True(await requests.DueAsync(hour, TimeSpan.Zero, day, default));

        await requests.DoneAsync(asked, default);
        Assert.False(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default));
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
