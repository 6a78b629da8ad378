using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests;
using FleetTrend.Synthetic;
using Grpc.Core;

using Record = FleetTrend.Contracts.V1.Record;

namespace FleetTrend.FaultTests;

[Collection(SharedPostgres.Name)]
public class KilledApiTests(PostgresFixture server)
{
    private const int Kills = 3;

    [Fact]
    public async Task Every_acknowledged_record_is_there_once_after_the_api_is_killed_in_mid_stream()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        var api = await product.StartApiAsync();
        var records = await RegisterAsync(product);
        var acknowledged = new HashSet<long>();
        for (var kill = 0; kill < Kills; kill++)
        {
            // Killed once a share of the records is through, so in mid-stream on any machine.
            var enough = acknowledged.Count + (records.Count / (Kills + 2));
            await PushAsync(product, records, acknowledged, stopWhen: () => acknowledged.Count >= enough, then: api.Kill);
            await AssertStoredAsync(product, acknowledged.Count, records.Count);
            api = await product.StartApiAsync();
        }

        await PushAsync(product, records, acknowledged, stopWhen: () => false, then: () => { });
        Assert.Equal(records.Count, acknowledged.Count);
        await AssertStoredAsync(product, records.Count, records.Count);
        Assert.Equal(records.Count, await product.CountAsync("SELECT count(DISTINCT (source_id, source_record_id, revision)) FROM records"));
    }

    private static async Task<IReadOnlyList<Record>> RegisterAsync(ProductUnderTest product)
    {
        using var channel = await product.ChannelAsync();
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(5, new DateOnly(2026, 3, 31), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
        {
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });
        }

        return fleet.Records;
    }

    /// <summary>Sends what is not acknowledged yet, until the end or until the API is gone.</summary>
    private static async Task PushAsync(
        ProductUnderTest product, IReadOnlyList<Record> records, HashSet<long> acknowledged, Func<bool> stopWhen, System.Action then)
    {
        using var channel = await product.ChannelAsync();
        using var call = new IntakeService.IntakeServiceClient(channel).StreamRecords();
        var missing = Enumerable.Range(0, records.Count).Where(i => !acknowledged.Contains(i)).ToList();
        var writing = WriteAsync(call.RequestStream, records, missing);
        try
        {
            await foreach (var answer in call.ResponseStream.ReadAllAsync())
            {
                Assert.True(
                    answer.Outcome.State is RecordState.Accepted or RecordState.Unchanged,
                    answer.Outcome.Error?.Message);
                acknowledged.Add(answer.Sequence);
                if (stopWhen())
                {
                    then();
                    break;
                }
            }

            await writing;
        }
        catch (Exception gone) when (gone is RpcException { StatusCode: StatusCode.Unavailable or StatusCode.Cancelled or StatusCode.Internal }
            or IOException or InvalidOperationException)
        {
            // The API was killed under the stream; the caller looks at what was acknowledged.
        }
    }

    private static async Task WriteAsync(IClientStreamWriter<StreamRecordsRequest> stream, IReadOnlyList<Record> records, List<int> which)
    {
        foreach (var i in which)
        {
            await stream.WriteAsync(new StreamRecordsRequest { Sequence = i, Record = records[i] });
        }

        await stream.CompleteAsync();
    }

    private static async Task AssertStoredAsync(ProductUnderTest product, int atLeast, int atMost)
    {
        // Written and not acknowledged is possible when the kill falls in between; acknowledged and not written is not.
        Assert.InRange(await product.CountAsync("SELECT count(*) FROM records"), atLeast, atMost);
    }
}
