using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>A call that only checks answers as the real one would and writes nothing (AIP-163: validate_only).</summary>
[Collection(SharedPostgres.Name)]
public sealed class ValidateOnlyTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly string[] Tables =
        ["records", "aircraft", "airframes", "findings", "refresh_requests", "sources", "layouts", "locations", "type_groups"];

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_batch_is_judged_as_if_pushed_and_nothing_is_written()
    {
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card 1") } });
        var before = await CountsAsync();
        var other = ShopCards.Finding("card 1");
        other.Finding.SizeMm = 9;

        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            ValidateOnly = true,
            Records =
            {
                ShopCards.Finding("card 1"), other, ShopCards.Finding("card 2", registration: "ZZ-B02"), ShopCards.Aircraft("ZZ-B02"),
                ShopCards.Finding("card 3", registration: "ZZ-B02"), ShopCards.Finding("card 4", hours: -1),
            },
        });

        Assert.Equal(
            [RecordState.Unchanged, RecordState.Refused, RecordState.Refused, RecordState.Valid, RecordState.Valid, RecordState.Refused],
            response.Outcomes.Select(o => o.State));
        Assert.Equal((0, 1, 3, 2), (response.AcceptedCount, response.UnchangedCount, response.RefusedCount, response.ValidCount));
        Assert.Null(response.Outcomes[3].AcceptTime);
        Assert.Equal(before, await CountsAsync());
    }

    [Fact]
    public async Task One_record_is_checked_over_gRPC_and_JSON()
    {
        var before = await CountsAsync();
        var valid = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01"), ValidateOnly = true });
        var refused = await Assert.ThrowsAsync<RpcException>(() =>
            server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Finding("card 1"), ValidateOnly = true }).ResponseAsync);
        using var response = await server.Http.PostAsync("v1/records?validate_only=true", JsonContent.Create(new
        {
            key = new { source = ShopCards.Source, sourceRecordId = "card 9", revision = 2 },
            retraction = new { reason = "twice" },
        }));

        Assert.Equal(RecordState.Valid, valid.Outcome.State);
        Assert.Equal("AIRCRAFT_NOT_REGISTERED", refused.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
        Assert.Equal("RECORD_STATE_VALID", (string?)(await response.Content.ReadFromJsonAsync<JsonNode>())!["outcome"]!["state"]);
        Assert.Equal(before, await CountsAsync());
    }

    [Fact]
    public async Task In_a_stream_each_message_says_whether_it_is_only_checked()
    {
        using var call = server.Intake.StreamRecords();
        (Record Record, bool ValidateOnly)[] sent =
        [
            (ShopCards.Aircraft("ZZ-A01"), true), (ShopCards.Finding("card 1"), true), (ShopCards.Finding("card 1"), false),
            (ShopCards.Finding("card 2"), true), (ShopCards.Aircraft("ZZ-A01"), false), (ShopCards.Finding("card 1"), false),
        ];
        foreach (var (index, message) in sent.Index())
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = index, Record = message.Record, ValidateOnly = message.ValidateOnly });
        await call.RequestStream.CompleteAsync();
        var states = new List<RecordState>();
        while (await call.ResponseStream.MoveNext(default))
            states.Add(call.ResponseStream.Current.Outcome.State);

        Assert.Equal(
            [RecordState.Valid, RecordState.Valid, RecordState.Refused, RecordState.Valid, RecordState.Accepted, RecordState.Accepted], states);
    }

    [Fact]
    public async Task A_source_a_layout_and_a_type_group_are_checked_and_not_created()
    {
        var before = await CountsAsync();
        var layout = new Layout { Name = "invented", Locations = { new Location { Path = "exhaust/ring/weld", Kind = "flange-weld" } } };

        await server.Sources.CreateSourceAsync(new CreateSourceRequest { Source = new Source { Name = "other-tool" }, ValidateOnly = true });
        await server.Layouts.CreateLayoutAsync(new CreateLayoutRequest { Layout = layout, ValidateOnly = true });
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest
        {
            TypeGroup = new TypeGroup { Name = "rings", Layout = "one-cylinder" },
            ValidateOnly = true,
        });
        var inUse = await Assert.ThrowsAsync<RpcException>(() => server.Sources.CreateSourceAsync(
            new CreateSourceRequest { Source = new Source { Name = ShopCards.Source, Title = "Another" }, ValidateOnly = true }).ResponseAsync);

        Assert.Equal(StatusCode.AlreadyExists, inUse.StatusCode);
        Assert.Equal(before, await CountsAsync());
    }

    private async Task<IReadOnlyList<long>> CountsAsync()
    {
        var counts = new List<long>();
        foreach (var table in Tables)
        {
            await using var command = server.Database.DataSource.CreateCommand($"select count(*) from {table}");
            counts.Add((long)(await command.ExecuteScalarAsync())!);
        }

        return counts;
    }
}
