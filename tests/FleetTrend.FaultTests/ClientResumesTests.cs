using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests;
using FleetTrend.Synthetic;

namespace FleetTrend.FaultTests;

/// <summary>The client package against an API that is killed under it and started again.</summary>
[Collection(SharedPostgres.Name)]
public class ClientResumesTests(PostgresFixture server)
{
    private const int Kills = 5;

    [Fact]
    public async Task One_push_survives_an_api_killed_again_and_again_and_every_record_has_one_outcome_and_one_row()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        var api = await product.StartApiAsync();
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = new Uri(product.GrpcUrl), Key = await product.CreateKeyAsync() });
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(5, new DateOnly(2026, 3, 31), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });

        var pusher = new RecordPusher(channel, new PushOptions { FirstPause = TimeSpan.FromMilliseconds(100), MaxInFlight = 300 });
        var indexes = new List<long>();
        Task<ProductProcess>? restart = null;
        await foreach (var pushed in pusher.PushAsync(fleet.Records.ToAsyncEnumerable()))
        {
            Assert.True(pushed.Outcome.State is RecordState.Accepted or RecordState.Unchanged, pushed.Outcome.Error?.Message);
            indexes.Add(pushed.Index);
            // Killed each time that a share of the records is through, so in mid-stream on any machine.
            if (indexes.Count % (fleet.Records.Count / (Kills + 1)) != 0 || indexes.Count > fleet.Records.Count - (Kills + 1))
                continue;
            api = restart is null ? api : await restart;
            api.Kill();
            restart = product.StartApiAsync();
        }

        Assert.NotNull(restart);
        await restart;
        Assert.Equal(Enumerable.Range(0, fleet.Records.Count).Select(i => (long)i), indexes.Order());
        Assert.Equal(fleet.Records.Count, await product.CountAsync("SELECT count(*) FROM records"));
        Assert.Equal(fleet.Records.Count, await product.CountAsync("SELECT count(DISTINCT (source_id, source_record_id, revision)) FROM records"));
    }
}
