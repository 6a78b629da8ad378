using FleetTrend.Store.Histories;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>A fixed moment of knowledge never changes what it shows, whatever writers do meanwhile.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KnowledgeTests(PostgresFixture postgres)
{
    [Fact]
    public async Task What_a_moment_shows_is_complete_when_it_is_fixed_while_writers_are_at_work()
    {
        await using var store = await CreateAsync(postgres);
        var knowledge = store.StartProcess().GetRequiredService<Knowledge>();
        await store.StartProcess().GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);
        var writing = Task.WhenAll(Enumerable.Range(0, 4).Select(w =>
        {
            var writer = store.StartProcess().GetRequiredService<RecordWriter>();
            return Task.Run(async () =>
            {
                for (var i = 0; i < 60; i++)
                    await writer.SaveAsync([.. Enumerable.Range(0, 5).Select(j => Crack($"f-{w}-{i}-{j}", "ZZ-A01"))], default);
            });
        }));

        var seen = new List<(DateTimeOffset AsOf, long Count)>();
        while (!writing.IsCompleted)
        {
            var asOf = await knowledge.FixAsOfAsync(default);
            seen.Add((asOf, await CountAsync(store, asOf)));
        }

        await writing;
        Assert.Equal(1201L, await store.ScalarAsync<long>("select count(*) from records"));
        Assert.True(seen.Select(moment => moment.Count).Distinct().Count() > 5, "The writers were over before moments were fixed among them.");
        foreach (var (asOf, count) in seen)
            Assert.Equal(count, await CountAsync(store, asOf));
        Assert.Equal(seen.Count, seen.Select(moment => moment.AsOf).Distinct().Count());
    }

    [Fact]
    public async Task A_moment_waits_for_a_writer_that_has_begun()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);
        await using var holder = await store.DataSource.OpenConnectionAsync();
        await using var transaction = await holder.BeginTransactionAsync();

        // The aircraft's row is taken, so that a writer of a new aircraft of that name stops in the middle of its transaction.
        await using (var insert = new NpgsqlCommand("insert into aircraft (registration) values ('ZZ-A02')", holder))
            await insert.ExecuteNonQueryAsync();
        var writing = process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A02")], default);
        await WaitForLockWaitersAsync(store, 1);
        var fixing = process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        await WaitForLockWaitersAsync(store, 2);
        Assert.False(fixing.IsCompleted);

        await transaction.RollbackAsync();

        var accepted = Assert.IsType<SaveResult.Accepted>((await writing)[0]);
        Assert.True(accepted.AcceptTime <= await fixing);
    }

    [Fact]
    public async Task A_clock_that_was_set_back_brings_no_record_before_a_fixed_moment()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var asOf = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        await using (var ahead = store.DataSource.CreateCommand("update knowledge set last_as_of = last_as_of + interval '1 hour' returning last_as_of"))
            asOf = new DateTimeOffset((DateTime)(await ahead.ExecuteScalarAsync())!);

        var result = await process.GetRequiredService<RecordWriter>().SaveAsync([Aircraft("ZZ-A01")], default);
        var next = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);

        Assert.True(Assert.IsType<SaveResult.Accepted>(result[0]).AcceptTime > asOf);
        Assert.True(next > asOf);
    }

    private static async Task<long> CountAsync(StoreFixture store, DateTimeOffset asOf)
    {
        await using var command = store.DataSource.CreateCommand("select count(*) from records where accept_time <= $1");
        command.Parameters.Add(new NpgsqlParameter { Value = asOf });
        return (long)(await command.ExecuteScalarAsync())!;
    }

    private static async Task WaitForLockWaitersAsync(StoreFixture store, int count)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (await store.ScalarAsync<long>(
            "select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'") < count)
        {
            limit.Token.ThrowIfCancellationRequested();
        }
    }
}
