using FleetTrend.Store.Histories;
using FleetTrend.Store.Parameters;
using FleetTrend.Store.Requests;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>Parameters with their history: what was in force at a moment never changes.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ParameterStoreTests(PostgresFixture postgres)
{
    private const string Wide = """{"confidence":0.9}""";
    private const string Narrow = """{"confidence":0.99}""";

    [Fact]
    public async Task Until_the_first_change_the_shipped_defaults_are_in_force()
    {
        await using var store = await CreateAsync(postgres);
        var parameters = store.StartProcess().GetRequiredService<ParameterStore>();
        Assert.Equal(ParameterRevision.Shipped, await parameters.ReadAsync(null, default));
        Assert.Equal(ParameterRevision.Shipped, await parameters.ReadAsync(DateTimeOffset.UtcNow.AddDays(1), default));
        Assert.Equal((0, null), (ParameterRevision.Shipped.Revision, ParameterRevision.Shipped.ValuesJson));
        Assert.Empty((await parameters.ListAsync(10, null, default)).Items);
    }

    [Fact]
    public async Task A_moment_shows_what_was_in_force_then_whatever_came_after()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var (parameters, knowledge) = (process.GetRequiredService<ParameterStore>(), process.GetRequiredService<Knowledge>());
        var before = await knowledge.FixAsOfAsync(default);
        var first = await ChangeAsync(parameters, 0, Wide);
        var between = await knowledge.FixAsOfAsync(default);
        var second = await ChangeAsync(parameters, 1, Narrow);
        var after = await knowledge.FixAsOfAsync(default);

        Assert.Equal((ParameterChangeState.Stored, ParameterChangeState.Stored), (first.State, second.State));
        Assert.True(before < first.InForce.ChangeTime && first.InForce.ChangeTime < between
            && between < second.InForce.ChangeTime && second.InForce.ChangeTime < after);
        Assert.Equal(0, (await parameters.ReadAsync(before, default)).Revision);
        Assert.Equal(first.InForce, await parameters.ReadAsync(between, default));
        Assert.Equal(first.InForce, await parameters.ReadAsync(first.InForce.ChangeTime, default)); // from the very moment
        Assert.Equal(second.InForce, await parameters.ReadAsync(after, default));
        Assert.Equal(second.InForce, await parameters.ReadAsync(null, default));
        Assert.Equal((2, Narrow, "lead", "why 2"), (second.InForce.Revision, second.InForce.ValuesJson, second.InForce.ChangedBy, second.InForce.Note));
    }

    [Fact] // A fixed moment may lie ahead of a clock that was set back.
    public async Task A_change_is_later_than_every_moment_that_was_fixed_before()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        await ExecuteAsync(store, "update knowledge set last_as_of = last_as_of + interval '1 hour'");
        var ahead = await store.ScalarAsync<DateTime>("select last_as_of from knowledge");
        var parameters = process.GetRequiredService<ParameterStore>();
        Assert.Equal(ahead.AddTicks(TimeSpan.TicksPerMicrosecond), (await ChangeAsync(parameters, 0, Wide)).InForce.ChangeTime!.Value.UtcDateTime);
        Assert.True((await ChangeAsync(parameters, 1, Narrow)).InForce.ChangeTime!.Value.UtcDateTime > ahead.AddTicks(TimeSpan.TicksPerMicrosecond));
        Assert.Equal(0, (await parameters.ReadAsync(new DateTimeOffset(ahead), default)).Revision);
    }

    [Fact]
    public async Task A_moment_waits_for_a_change_that_is_under_way()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var knowledge = process.GetRequiredService<Knowledge>();
        await using var holder = await store.DataSource.OpenConnectionAsync();
        await using var transaction = await holder.BeginTransactionAsync();
        await using (var hold = new NpgsqlCommand("lock table parameter_revisions in exclusive mode", holder))
            await hold.ExecuteNonQueryAsync();
        var changing = ChangeAsync(process.GetRequiredService<ParameterStore>(), 0, Wide);
        await WaitersAsync(store, 1);
        var fixing = knowledge.FixAsOfAsync(default);
        await WaitersAsync(store, 2);
        Assert.False(fixing.IsCompleted);
        await transaction.CommitAsync();
        Assert.True((await changing).InForce.ChangeTime < await fixing);
    }

    [Fact]
    public async Task Of_two_changes_of_the_same_revision_one_is_lost_and_told_so()
    {
        await using var store = await CreateAsync(postgres);
        var changes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            ChangeAsync(store.StartProcess().GetRequiredService<ParameterStore>(), 0, $$"""{"confidence":0.9{{i}}}""")));
        var stored = Assert.Single(changes, c => c.State == ParameterChangeState.Stored);
        Assert.Equal(7, changes.Count(c => c.State == ParameterChangeState.ChangedMeanwhile && c.InForce == stored.InForce));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from parameter_revisions"));
    }

    [Fact] // A call that is repeated after its answer was lost.
    public async Task The_values_in_force_sent_again_change_nothing()
    {
        await using var store = await CreateAsync(postgres);
        var parameters = store.StartProcess().GetRequiredService<ParameterStore>();
        var stored = await ChangeAsync(parameters, 0, Wide);
        Assert.Equal(new ParameterChange(ParameterChangeState.Unchanged, stored.InForce), await ChangeAsync(parameters, 0, Wide));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from refresh_requests"));
    }

    [Fact]
    public async Task A_change_asks_for_a_refresh_at_once_that_only_a_later_moment_answers_and_a_check_asks_for_none()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var (parameters, requests) = (process.GetRequiredService<ParameterStore>(), process.GetRequiredService<RefreshRequests>());
        var earlier = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        await ChangeAsync(parameters, 0, Wide, write: false);
        Assert.False(await requests.DueAsync(TimeSpan.FromDays(1), TimeSpan.Zero, TimeSpan.FromDays(1), default));
        Assert.Equal(ParameterRevision.Shipped, await parameters.ReadAsync(null, default));
        await ChangeAsync(parameters, 0, Wide);
        await requests.DoneAsync(earlier, default);
        Assert.True(await requests.DueAsync(TimeSpan.FromDays(1), TimeSpan.Zero, TimeSpan.FromDays(1), default));
        await requests.DoneAsync(await process.GetRequiredService<Knowledge>().FixAsOfAsync(default), default);
        Assert.False(await requests.DueAsync(TimeSpan.FromDays(1), TimeSpan.Zero, TimeSpan.FromDays(1), default));
    }

    [Fact]
    public async Task The_history_reads_back_newest_first_by_page()
    {
        await using var store = await CreateAsync(postgres);
        var parameters = store.StartProcess().GetRequiredService<ParameterStore>();
        for (var i = 0; i < 5; i++)
            await ChangeAsync(parameters, i, $$"""{"confidence":0.9{{i}}}""");
        var first = await parameters.ListAsync(3, null, default);
        var second = await parameters.ListAsync(3, first.NextPageToken, default);
        Assert.Equal([5, 4, 3, 2, 1], first.Items.Concat(second.Items).Select(r => r.Revision));
        Assert.Equal(["""{"confidence":0.94}""", """{"confidence":0.93}"""], first.Items.Take(2).Select(r => r.ValuesJson));
        Assert.Null(second.NextPageToken);
        await Assert.ThrowsAsync<FormatException>(() => parameters.ListAsync(3, "x", default));
    }

    private static Task<ParameterChange> ChangeAsync(ParameterStore parameters, int replaced, string json, bool write = true) =>
        parameters.ChangeAsync(replaced, json, inForce => inForce.ValuesJson == json, "lead", $"why {replaced + 1}", write, default);

    private static async Task ExecuteAsync(StoreFixture store, string statement)
    {
        await using var command = store.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }

    private static Task WaitersAsync(StoreFixture store, long count) => Eventually.TrueAsync(async () =>
        await store.ScalarAsync<long>("select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'") >= count);
}
