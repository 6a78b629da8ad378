using FleetTrend.Store.Flags;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>A flag is raised once, stays one while it is not closed, and comes back only by what came after its closing.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FlagStoreTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 4, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Two_workers_at_once_raise_a_flag_once()
    {
        await using var store = await CreateAsync(postgres);
        var workers = Enumerable.Range(0, 4).Select(_ => store.StartProcess().GetRequiredService<FlagStore>()).ToList();
        FlagProposal[] proposals = [Proposal("ZZ-A01", 3), Proposal("ZZ-A02", 4)];

        var raised = await Task.WhenAll(workers.Select((flags, i) => Task.Run(() => flags.RaiseAsync(Monday.AddMinutes(i), proposals, default))));

        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from flags"));
        Assert.Equal(2, raised.Sum(list => list.Count));
    }

    [Fact]
    public async Task A_repeated_refresh_answers_the_same_and_a_later_one_brings_fresh_evidence()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();

        var first = await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default);
        var again = await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default);
        var later = await flags.RaiseAsync(Monday.AddDays(1), [Proposal("ZZ-A01", 5)], default);
        var late = await flags.RaiseAsync(Monday.AddHours(1), [Proposal("ZZ-A01", 4)], default);

        Assert.Equal(first, again);
        Assert.Empty(later);
        Assert.Empty(late);
        var flag = Assert.Single((await flags.ListAsync(null, null, 10, null, default)).Items);
        Assert.Equal(Proposal("ZZ-A01", 5), flag.Proposal);
        Assert.Equal((FlagState.Open, Monday, Monday.AddDays(1)), (flag.State, flag.RaiseTime, flag.LastSeenTime));
    }

    [Fact]
    public async Task An_acknowledged_flag_is_not_raised_again_and_a_closed_one_only_by_a_refresh_that_knew_of_the_closing()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        var raised = Assert.Single(await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default));

        var acknowledged = await flags.AcknowledgeAsync(raised.FlagId, "lead mechanic", "on the next 100-hour", write: true, default);
        var repeated = await flags.AcknowledgeAsync(raised.FlagId, "lead mechanic", "on the next 100-hour", write: true, default);
        Assert.Equal(acknowledged, repeated);
        Assert.Equal(FlagState.Acknowledged, acknowledged!.State);
        Assert.Empty(await flags.RaiseAsync(Monday.AddDays(1), [Proposal("ZZ-A01", 4)], default));

        var closed = await flags.CloseAsync(raised.FlagId, "lead mechanic", "hanger moved", write: true, default);
        Assert.Equal((FlagState.Closed, "hanger moved"), (closed!.State, closed.Answer));
        Assert.Equal(closed, await flags.AcknowledgeAsync(raised.FlagId, "somebody", "too late", write: true, default));
        // A refresh that was under way when it was closed has counted everything; a later one counts what came after, be it fewer.
        Assert.Empty(await flags.RaiseAsync(closed.AnswerTime!.Value.AddSeconds(-1), [Proposal("ZZ-A01", 5)], default));
        var anew = Assert.Single(await flags.RaiseAsync(closed.AnswerTime!.Value.AddDays(1), [Proposal("ZZ-A01", 3)], default));

        Assert.NotEqual(raised.FlagId, anew.FlagId);
        Assert.Equal(closed, await flags.GetAsync(raised.FlagId, default));
        Assert.Null(await flags.CloseAsync(999, "nobody", "nothing", write: true, default));
    }

    [Fact]
    public async Task Flags_are_listed_newest_first_by_page_state_and_aircraft()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        await flags.RaiseAsync(Monday, [.. Enumerable.Range(0, 5).Select(i => Proposal($"ZZ-A0{i}", 3))], default);
        var first = await flags.ListAsync(null, null, 3, null, default);
        var second = await flags.ListAsync(null, null, 3, first.NextPageToken, default);
        await flags.CloseAsync(first.Items[0].FlagId, "lead", "done", write: true, default);

        Assert.Equal(5, first.Items.Concat(second.Items).Select(flag => flag.FlagId).Distinct().Count());
        Assert.True(first.Items[0].FlagId > second.Items[^1].FlagId);
        Assert.Null(second.NextPageToken);
        Assert.Equal(4, (await flags.ListAsync(null, null, 10, null, default)).Items.Count);
        Assert.Single((await flags.ListAsync(FlagState.Closed, null, 10, null, default)).Items);
        Assert.Single((await flags.ListAsync(null, second.Items[0].Proposal.Registration, 10, null, default)).Items);
        await Assert.ThrowsAsync<FormatException>(() => flags.ListAsync(null, null, 10, "not a token!", default));
    }

    private static FlagProposal Proposal(string registration, int events) => new()
    {
        Subject = $"AirframeDrift {registration} Crack",
        Kind = "AirframeDrift",
        Registration = registration,
        Base = "Invented Field",
        TypeGroup = TypeGroup,
        EventCount = events,
        BodyJson = $$"""{ "observed" : {{events}} }""",
    };
}
