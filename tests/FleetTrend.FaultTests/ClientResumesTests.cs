using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests;
using FleetTrend.Synthetic;
using Record = FleetTrend.Contracts.V1.Record;

namespace FleetTrend.FaultTests;

/// <summary>The client package against an API that is killed under it and started again.</summary>
[Collection(SecondPostgres.Name)]
public class ClientResumesTests(PostgresFixture server)
{
    private const int Kills = 50;
    private const int Seed = 20_260_302;

    [Fact]
    public async Task One_push_survives_an_api_killed_at_fifty_random_moments_and_every_record_has_one_outcome_and_one_row()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        var api = await product.StartApiAsync();
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = new Uri(product.GrpcUrl), Key = await product.CreateKeyAsync() });
        var records = await RegisterAsync(channel);
        var moments = RandomMoments(records.Count);
        var pusher = new RecordPusher(channel, new PushOptions
        {
            FirstPause = TimeSpan.FromMilliseconds(50),
            LongestPause = TimeSpan.FromMilliseconds(400),
            MaxInFlight = 100,
        });
        var indexes = new List<long>();
        var restart = Task.FromResult(api);
        await foreach (var pushed in pusher.PushAsync(records.ToAsyncEnumerable()))
        {
            Assert.True(pushed.Outcome.State is RecordState.Accepted or RecordState.Unchanged, pushed.Outcome.Error?.Message);
            indexes.Add(pushed.Index);
            if (!moments.Contains(indexes.Count))
                continue;
            (await restart).Kill();
            restart = product.StartApiAsync();
        }

        await restart;
        Assert.Equal(Enumerable.Range(0, records.Count).Select(i => (long)i), indexes.Order());
        Assert.Equal(records.Count, await product.CountAsync("SELECT count(*) FROM records"));
        Assert.Equal(records.Count, await product.CountAsync("SELECT count(DISTINCT (source_id, source_record_id, revision)) FROM records"));

        // No envelope without its content: what one kill cut in half would show here.
        Assert.Equal(
            records.Count(r => r.Finding is not null),
            await product.CountAsync("SELECT count(*) FROM findings JOIN records ON records.id = findings.record_id"));
    }

    /// <summary>Moments told in outcomes, so in mid-stream on a machine of any speed; one after the other, at random distances.</summary>
    private static HashSet<int> RandomMoments(int records)
    {
        var random = new Random(Seed);
        var moments = new HashSet<int>();
        while (moments.Count < Kills)
            moments.Add(random.Next(1, records - 200)); // at the last of them there is still something to send
        return moments;
    }

    private static async Task<IReadOnlyList<Record>> RegisterAsync(Grpc.Net.Client.GrpcChannel channel)
    {
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(
            30, new DateOnly(2026, 3, 31), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });
        return fleet.Records;
    }
}
