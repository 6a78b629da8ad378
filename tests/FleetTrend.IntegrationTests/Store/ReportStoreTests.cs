using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Schedules;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>One report, one mail per recipient, whoever is killed when.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ReportStoreTests(PostgresFixture postgres)
{
    private static readonly TimeSpan Long = TimeSpan.FromHours(1);

    [Fact]
    public async Task Two_workers_at_once_save_a_report_and_its_mails_once()
    {
        await using var store = await CreateAsync(postgres);
        var workers = Enumerable.Range(0, 4).Select(_ => store.StartProcess().GetRequiredService<ReportStore>()).ToList();

        var saved = await Task.WhenAll(workers.Select(reports => Task.Run(() =>
            reports.SaveAsync(Report(), ["lead@shop.example", "director@shop.example", "lead@shop.example"], default))));

        Assert.Single(saved, result => result.IsNew);
        Assert.Single(saved.Select(result => result.ReportId).Distinct());
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from reports"));
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from outbox_mails"));
    }

    [Fact]
    public async Task A_report_comes_back_to_the_byte()
    {
        await using var store = await CreateAsync(postgres);
        var reports = store.StartProcess().GetRequiredService<ReportStore>();

        var saved = await reports.SaveAsync(Report(), [], default);
        await reports.SaveAsync(Report(week: 1), [], default);

        var report = await reports.GetAsync(saved.ReportId, default);
        Assert.Equivalent(Report() with { ReportId = saved.ReportId }, report, strict: true);
        Assert.Equal(new DateOnly(2026, 3, 15), (await reports.LatestAsync(ReportScope.WholeFleet, default))!.PeriodEnd);
        Assert.Null(await reports.LatestAsync(new ReportScope("Nowhere"), default));
        Assert.Null(await reports.GetAsync(999, default));
        var page = await reports.ListAsync(null, 1, null, default);
        Assert.Equal(saved.ReportId, Assert.Single((await reports.ListAsync(ReportScope.WholeFleet, 1, page.NextPageToken, default)).Items).ReportId);
    }

    [Fact]
    public async Task A_mail_is_taken_by_one_sender_until_its_lease_ends_and_keeps_its_message_id()
    {
        await using var store = await CreateAsync(postgres);
        var first = store.StartProcess().GetRequiredService<OutboxStore>();
        var second = store.StartProcess().GetRequiredService<OutboxStore>();
        var reports = store.StartProcess().GetRequiredService<ReportStore>();
        await reports.SaveAsync(Report(), [.. Enumerable.Range(0, 20).Select(i => $"mechanic-{i}@shop.example")], default);

        // Two senders at once share the mails and take none twice.
        var takes = await Task.WhenAll(Task.Run(() => first.TakeDueAsync(15, Long, default)), Task.Run(() => second.TakeDueAsync(15, Long, default)));
        var taken = takes.SelectMany(mails => mails).ToList();
        Assert.Equal(20, taken.Select(mail => mail.MailId).Distinct().Count());
        Assert.Equal(20, taken.Count);
        Assert.Empty(await first.TakeDueAsync(15, Long, default));

        // The first sender dies: its leases end.
        await using (var expire = store.DataSource.CreateCommand("update outbox_mails set next_attempt_time = clock_timestamp()"))
            await expire.ExecuteNonQueryAsync();
        var again = await second.TakeDueAsync(50, Long, default);
        Assert.Equal(
            taken.Select(mail => (mail.MailId, mail.MessageId, 2)).Order(), again.Select(mail => (mail.MailId, mail.MessageId, mail.Attempt)).Order());
        Assert.Equal(20, again.Select(mail => mail.MessageId).Distinct().Count());

        // What the dead sender says late does not count; sent stays sent.
        await first.MarkFailedAsync(taken[0].MailId, 1, "timeout", DateTimeOffset.UnixEpoch, default);
        Assert.Empty(await first.TakeDueAsync(50, Long, default));
        await second.MarkSentAsync(again[0].MailId, default);
        await second.MarkFailedAsync(again[0].MailId, 2, "late", DateTimeOffset.UnixEpoch, default);
        await second.MarkFailedAsync(again[1].MailId, 2, "mailbox full", DateTimeOffset.UnixEpoch, default);
        Assert.Equal((again[1].MailId, 3), (await first.TakeDueAsync(50, Long, default)).Select(mail => (mail.MailId, mail.Attempt)).Single());
    }

    [Fact]
    public async Task A_report_request_is_answered_once_and_taken_over_when_its_lease_ends()
    {
        await using var store = await CreateAsync(postgres);
        var requests = store.StartProcess().GetRequiredService<ReportRequests>();

        var (start, end) = (new DateOnly(2026, 3, 2), new DateOnly(2026, 3, 8));
        var taken = new TakenReportRequest("now-please", start, end);

        var first = await requests.AddAsync("now-please", start, end, write: true, default);
        Assert.Equal(first.RequestTime, (await requests.AddAsync("now-please", start.AddDays(1), end.AddDays(1), write: true, default)).RequestTime);
        Assert.Equal(taken, await requests.TakeAsync(TimeSpan.Zero, default)); // and dies
        Assert.Equal(taken, await requests.TakeAsync(Long, default));
        Assert.Null(await requests.TakeAsync(Long, default));
        await requests.DoneAsync("now-please", default);
        await requests.AddAsync("now-please", start, end, write: true, default);
        Assert.Null(await requests.TakeAsync(TimeSpan.Zero, default));
    }

    [Fact]
    public async Task Recipients_are_set_as_a_whole()
    {
        await using var store = await CreateAsync(postgres);
        var schedules = store.StartProcess().GetRequiredService<ScheduleStore>();
        var home = new ReportScope("Invented Field");

        await SetAsync(home, "b@shop.example", "a@shop.example", "b@shop.example");
        await SetAsync(ReportScope.WholeFleet, "director@shop.example");
        Assert.Equal(["b@shop.example", "c@shop.example"], await SetAsync(home, "c@shop.example", "b@shop.example"));

        Assert.Equal(
            [("Whole fleet", "director@shop.example"), ("Base Invented Field", "b@shop.example c@shop.example")],
            (await schedules.ListAsync(default)).Select(s => (s.Name, string.Join(' ', s.Recipients))));
        await SetAsync(home);
        Assert.Equal([1, 0], (await schedules.ListAsync(default)).Select(s => s.Recipients.Count));

        Task<IReadOnlyList<string>> SetAsync(ReportScope scope, params string[] addresses) => schedules.SetRecipientsAsync(
            scope, addresses,
            new ShippedSlot(new WeeklySlot(DayOfWeek.Monday, new TimeOnly(6, 0)), TimeZoneInfo.Utc).ScheduleOf(scope, DateTimeOffset.UnixEpoch),
            write: true, default);
    }

    private static StoredReport Report(int week = 0) => new()
    {
        Base = "*",
        PeriodStart = new DateOnly(2026, 3, 2).AddDays(7 * week),
        PeriodEnd = new DateOnly(2026, 3, 8).AddDays(7 * week),
        AsOf = new DateTimeOffset(2026, 3, 9, 4, 0, 0, TimeSpan.Zero).AddDays(7 * week),
        CodeVersion = "0.1.0",
        ParametersJson = """{ "z" : 1, "a" : 2.50 }""",
        Subject = "ZZ-A01 cracks again",
        Text = "text\n",
        Html = "<p>text</p>",
        Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["plot-1"] = [0, 255, 1], ["plot-2"] = [7] },
        MessageIdSeed = $"week {week}",
    };
}
