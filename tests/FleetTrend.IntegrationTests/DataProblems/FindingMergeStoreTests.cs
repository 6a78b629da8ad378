using FleetTrend.IntegrationTests.Store;
using FleetTrend.Records.Findings;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.DataProblems;

/// <summary>Merges are rows with a time: each moment of knowledge sees those that held then, for ever.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FindingMergeStoreTests(PostgresFixture postgres)
{
    private const string Cards = StoreFixture.Source;
    private const string Tablet = "tablet";
    private static readonly FindingName Kept = new(Cards, "c1");
    private static readonly FindingName Twin = new(Tablet, "t1");

    [Fact]
    public async Task A_merge_and_its_undo_are_seen_from_their_moment_on_and_never_before()
    {
        await using var store = await CreateAsync(postgres);
        var services = await FillAsync(store);
        var (merges, knowledge, reader) =
            (services.GetRequiredService<FindingMergeStore>(), services.GetRequiredService<Knowledge>(), services.GetRequiredService<HistoryReader>());

        var before = await knowledge.FixAsOfAsync(default);
        var merged = await merges.MergeAsync(Kept, Twin, "director", "one crack, two cards", write: true, default);
        Assert.Equal((MergeState.Stored, "ZZ-A01"), (merged.State, merged.Registration));
        var between = await knowledge.FixAsOfAsync(default);
        var undone = await merges.UnmergeAsync(Twin, "director", "two cracks after all", write: true, default);
        Assert.Equal(MergeState.Stored, undone.State);
        var after = await knowledge.FixAsOfAsync(default);
        Assert.Equal(MergeState.Stored, (await merges.MergeAsync(Kept, Twin, "director", "one, by photo", write: true, default)).State);

        Assert.Empty(await MergesAsync(before));
        Assert.Equal([new FindingMerge(Cards, "c1", Tablet, "t1")], await MergesAsync(between));
        Assert.Empty(await MergesAsync(after));
        Assert.Single(await MergesAsync(await knowledge.FixAsOfAsync(default)));
        Assert.True(before < merged.Merge!.DecideTime && merged.Merge.DecideTime <= between && between < undone.Merge!.DecideTime);

        var page = await merges.ListAsync(2, null, default);
        Assert.Equal([true, false], page.Items.Select(m => m.IsMerged));
        Assert.Equal(merged.Merge, Assert.Single((await merges.ListAsync(2, page.NextPageToken, default)).Items));
        Assert.True(await store.ScalarAsync<long>("select count(*) from refresh_requests") >= 3);

        async Task<IReadOnlyList<FindingMerge>> MergesAsync(DateTimeOffset asOf) =>
            (await reader.ReadAsync(asOf, default)).Aircraft.Single(a => a.Registration == "ZZ-A01").Merges;
    }

    [Fact]
    public async Task The_same_decision_again_changes_nothing_and_what_cannot_be_one_event_is_refused()
    {
        await using var store = await CreateAsync(postgres);
        var merges = (await FillAsync(store)).GetRequiredService<FindingMergeStore>();
        Assert.Equal(MergeState.NotMerged, (await merges.UnmergeAsync(Twin, "d", "n", write: true, default)).State);
        var first = await merges.MergeAsync(Kept, Twin, "director", "one crack", write: true, default);
        var again = await merges.MergeAsync(Kept, Twin, "another", "other words", write: true, default);
        Assert.Equal((MergeState.Unchanged, first.Merge), (again.State, again.Merge));

        Assert.Equal(MergeState.KeptNotFound, await StateAsync(new(Cards, "none"), Twin));
        Assert.Equal(MergeState.MergedNotFound, await StateAsync(Kept, new(Tablet, "none")));
        Assert.Equal(MergeState.MergedElsewhere, await StateAsync(new(Cards, "c2"), Twin));
        Assert.Equal(MergeState.KeptIsMerged, await StateAsync(Twin, new(Cards, "c2")));
        Assert.Equal(MergeState.NotAlike, await StateAsync(Kept, new(Tablet, "elsewhere")));
        Assert.Equal(MergeState.NotAlike, await StateAsync(Kept, new(Tablet, "other tail")));
        Assert.Equal(MergeState.MergedNotFound, await StateAsync(Kept, new(Tablet, "taken back")));
        Assert.Equal(1L, await store.ScalarAsync<long>("select count(*) from finding_merges"));

        Assert.Equal(MergeState.Stored, (await merges.UnmergeAsync(Twin, "d", "n", write: true, default)).State);
        Assert.Equal(MergeState.Unchanged, (await merges.UnmergeAsync(Twin, "d", "n", write: true, default)).State);

        async Task<MergeState> StateAsync(FindingName kept, FindingName merged) => (await merges.MergeAsync(kept, merged, "d", "n", write: true, default)).State;
    }

    [Fact] // Circles are refused because what stands must not be merged itself, also when both are asked for at once.
    public async Task Two_people_who_merge_both_ways_at_once_make_no_circle()
    {
        await using var store = await CreateAsync(postgres);
        await FillAsync(store);
        var results = await Task.WhenAll(new[] { (Kept, Twin), (Twin, Kept) }.Select(pair => Task.Run(() =>
            store.StartProcess().GetRequiredService<FindingMergeStore>().MergeAsync(pair.Item1, pair.Item2, "d", "n", write: true, default))));
        Assert.Single(results, r => r.State == MergeState.Stored);
        Assert.Single(results, r => r.State == MergeState.KeptIsMerged);
    }

    [Fact]
    public async Task A_retraction_is_alone_until_its_record_comes()
    {
        await using var store = await CreateAsync(postgres);
        var services = await FillAsync(store);
        var (writer, knowledge, reader) =
            (services.GetRequiredService<RecordWriter>(), services.GetRequiredService<Knowledge>(), services.GetRequiredService<HistoryReader>());
        await writer.SaveAsync([Retraction("mistyped", 2)], default);
        var alone = await knowledge.FixAsOfAsync(default);
        await writer.SaveAsync([Crack("mistyped", "ZZ-A01")], default);
        var both = await knowledge.FixAsOfAsync(default);

        var retraction = Assert.Single((await reader.ReadAsync(alone, default)).RetractionsAlone);
        Assert.Equal(("mistyped", "entered twice"), (retraction.Key.SourceRecordId, retraction.Content.Reason));
        Assert.Empty((await reader.ReadAsync(both, default)).RetractionsAlone);
        Assert.Single((await reader.ReadAsync(alone, default)).RetractionsAlone); // what was known then stays known then
    }

    private static async Task<IServiceProvider> FillAsync(StoreFixture store)
    {
        var services = store.StartProcess();
        await services.GetRequiredService<SourceStore>().AddAsync(Tablet, "Tablets", default);
        var results = await services.GetRequiredService<RecordWriter>().SaveAsync(
            [
                Aircraft("ZZ-A01"), Aircraft("ZZ-A02"),
                Crack("c1", "ZZ-A01"), Crack("c2", "ZZ-A01", 813),
                OfTablet("t1", "ZZ-A01", Weld), OfTablet("elsewhere", "ZZ-A01", "exhaust/cyl-1/flange-weld"), OfTablet("other tail", "ZZ-A02", Weld),
                OfTablet("taken back", "ZZ-A01", Weld), Record("taken back", 2, new FleetTrend.Records.Sources.Retraction("a stain"), Tablet),
            ],
            default);
        Assert.All(results, result => Assert.IsType<SaveResult.Accepted>(result));
        return services;
    }

    private static NewRecord.ToStore OfTablet(string id, string registration, string location) =>
        Record(id, 1, Crack(id, registration, location: location).Content, Tablet);
}
