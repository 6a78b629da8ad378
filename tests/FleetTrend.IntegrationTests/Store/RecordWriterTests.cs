using FleetTrend.Records.Findings;
using FleetTrend.Records.Readings;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Requests;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>Idempotency and conflicts; the rules are the project's own (domain: corrections supersede, order means nothing).</summary>
[Collection(SharedPostgres.Name)]
public sealed class RecordWriterTests(PostgresFixture postgres)
{
    [Fact]
    public async Task The_same_record_again_answers_as_the_first_time_and_writes_nothing()
    {
        await using var store = await CreateAsync(postgres);
        var writer = store.StartProcess().GetRequiredService<RecordWriter>();

        var first = await writer.SaveAsync([Aircraft("ZZ-A01"), Crack("f-1", "ZZ-A01")], default);
        var again = await writer.SaveAsync([Aircraft("ZZ-A01"), Crack("f-1", "ZZ-A01")], default);

        var accepted = Assert.IsType<SaveResult.Accepted>(first[1]);
        Assert.Equal(new SaveResult.Unchanged(accepted.AcceptTime), again[1]);
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from records"));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from findings"));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from refresh_requests"));
    }

    [Fact]
    public async Task The_same_key_with_other_content_is_a_conflict_and_stops_no_other()
    {
        await using var store = await CreateAsync(postgres);
        var writer = store.StartProcess().GetRequiredService<RecordWriter>();
        await writer.SaveAsync([Aircraft("ZZ-A01"), Crack("f-1", "ZZ-A01")], default);

        var results = await writer.SaveAsync([Crack("f-1", "ZZ-A01", 813), Crack("f-2", "ZZ-A01")], default);

        Assert.Equal(new SaveResult.Conflict(SaveConflict.RevisionReused, "1"), results[0]);
        Assert.IsType<SaveResult.Accepted>(results[1]);
        Assert.Equal(812.4m, await store.ScalarAsync<decimal>(
            "select time_in_service_hours from findings join records on id = record_id where source_record_id = 'f-1'"));
    }

    [Fact]
    public async Task A_batch_is_handled_as_if_its_records_were_sent_one_after_another()
    {
        await using var store = await CreateAsync(postgres);
        var writer = store.StartProcess().GetRequiredService<RecordWriter>();

        var results = await writer.SaveAsync(
            [
                Crack("f-1", "ZZ-A01"), // before its aircraft
                Aircraft("ZZ-A01"),
                Crack("f-1", "ZZ-A01"), // the same, now possible
                Crack("f-1", "ZZ-A01"),
                Crack("f-1", "ZZ-A01", 900),
                Record("f-1", 2, new MeterReading("ZZ-A01", new DateOnly(2025, 1, 1), Records.Hours.From(3))),
                Retraction("f-9", 2),
                Retraction("f-1", 2), // the revision above has the number
                Record("x", 1, new Finding
                {
                    Registration = "ZZ-A01", Location = "exhaust/cyl-9/flange-weld", FoundDate = new DateOnly(2025, 1, 1),
                    TimeInService = Records.Hours.From(3), Condition = Condition.Crack,
                }),
                Record("y", 1, new MeterReading("ZZ-A01", new DateOnly(2025, 1, 1), Records.Hours.From(3)), "nobody"),
            ],
            default);

        Assert.Equal(new SaveResult.Conflict(SaveConflict.AircraftUnknown, "ZZ-A01"), results[0]);
        var time = Assert.IsType<SaveResult.Accepted>(results[1]).AcceptTime;
        Assert.Equal(new SaveResult.Accepted(time), results[2]);
        Assert.Equal(new SaveResult.Unchanged(time), results[3]);
        Assert.Equal(new SaveResult.Conflict(SaveConflict.RevisionReused, "1"), results[4]);
        Assert.Equal(new SaveResult.Accepted(time), results[5]);
        Assert.Equal(new SaveResult.Accepted(time), results[6]);
        Assert.Equal(new SaveResult.Conflict(SaveConflict.RevisionReused, "2"), results[7]);
        Assert.Equal(new SaveResult.Conflict(SaveConflict.LocationUnknown, "exhaust/cyl-9/flange-weld"), results[8]);
        Assert.Equal(new SaveResult.Conflict(SaveConflict.SourceUnknown, "nobody"), results[9]);
        Assert.Equal(4L, await store.ScalarAsync<long>("select count(*) from records"));
    }

    [Fact]
    public async Task Concurrent_writers_with_the_same_records_store_each_once_and_all_are_told_so()
    {
        await using var store = await CreateAsync(postgres);
        var writers = Enumerable.Range(0, 6).Select(_ => store.StartProcess().GetRequiredService<RecordWriter>()).ToList();
        var records = Enumerable.Range(0, 40).Select(i => Aircraft($"ZZ-A{i:00}"))
            .Concat(Enumerable.Range(0, 400).Select(i => Crack($"f-{i}", $"ZZ-A{i % 40:00}"))).ToList();

        // Each writer sends the aircraft first, and the rest in an order of its own.
        var answers = await Task.WhenAll(writers.Select((writer, i) =>
        {
            var random = new Random(i);
            NewRecord[] mine = [.. records.Take(40), .. records.Skip(40).OrderBy(_ => random.Next())];
            return Task.Run(async () => mine.Zip(await writer.SaveAsync(mine, default)));
        }));

        Assert.Equal(440L, await store.ScalarAsync<long>("select count(*) from records"));
        Assert.Equal(400L, await store.ScalarAsync<long>("select count(*) from findings"));
        foreach (var record in records)
        {
            var outcomes = answers.SelectMany(answer => answer).Where(pair => pair.First == record).Select(pair => pair.Second).ToList();
            var accepted = Assert.Single(outcomes.OfType<SaveResult.Accepted>());
            Assert.Equal(5, outcomes.Count(outcome => outcome == new SaveResult.Unchanged(accepted.AcceptTime)));
        }
    }

    [Fact]
    public async Task Of_two_revisions_of_different_kinds_sent_at_once_the_newer_counts()
    {
        await using var store = await CreateAsync(postgres);
        var one = store.StartProcess().GetRequiredService<RecordWriter>();
        var two = store.StartProcess().GetRequiredService<RecordWriter>();
        await one.SaveAsync([Aircraft("ZZ-A01")], default);

        for (var i = 0; i < 50; i++)
        {
            var reading = Record($"r-{i}", 2, new MeterReading("ZZ-A01", new DateOnly(2025, 1, 1), Records.Hours.From(3)));
            await Task.WhenAll(
                Task.Run(() => one.SaveAsync([Crack($"r-{i}", "ZZ-A01")], default)),
                Task.Run(() => two.SaveAsync([reading], default)));
        }

        Assert.Equal(101L, await store.ScalarAsync<long>("select count(*) from records"));
        var asOf = await store.StartProcess().GetRequiredService<Knowledge>().FixAsOfAsync(default);
        var history = Assert.Single((await store.StartProcess().GetRequiredService<HistoryReader>().ReadAsync(asOf, default)).Aircraft);
        Assert.Equal((50, 0), (history.Readings.Count, history.Findings.Count));
    }

    [Fact]
    public async Task A_retraction_takes_back_what_comes_after_it()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await process.GetRequiredService<RecordWriter>().SaveAsync([Retraction("f-1", 2), Retraction("f-2", 3), Aircraft("ZZ-A01")], default);
        await process.GetRequiredService<RecordWriter>().SaveAsync([Crack("f-1", "ZZ-A01"), Crack("f-2", "ZZ-A01", revision: 2)], default);

        var asOf = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        Assert.Empty(Assert.Single((await process.GetRequiredService<HistoryReader>().ReadAsync(asOf, default)).Aircraft).Findings);
    }

    [Fact]
    public async Task A_refresh_is_owed_after_records_until_one_has_seen_them()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var requests = process.GetRequiredService<RefreshRequests>();
        Assert.False(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default));

        await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);

        Assert.True(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.FromHours(1), default));
        Assert.False(await requests.DueAsync(TimeSpan.FromHours(1), TimeSpan.Zero, TimeSpan.FromHours(1), default));
        Assert.True(await requests.DueAsync(TimeSpan.FromHours(1), TimeSpan.Zero, TimeSpan.Zero, default));
        var asOf = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A02")], default);
        await requests.DoneAsync(asOf, default);
        Assert.True(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default));
        await requests.DoneAsync(await process.GetRequiredService<Knowledge>().FixAsOfAsync(default), default);
        Assert.False(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default));
    }
}
