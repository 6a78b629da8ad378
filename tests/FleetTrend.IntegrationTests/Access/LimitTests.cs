using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>How much one key, and callers without one, may ask.</summary>
[Collection(SharedPostgres.Name)]
public sealed class LimitTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_key_that_calls_too_often_is_told_when_to_call_again_and_may_then()
    {
        await using var server = await StartAsync(new AccessSettings { CallsPerSecond = 1 });
        var other = new AccessService.AccessServiceClient(server.ChannelWith(await server.CreateKeyAsync(null, KeyScope.TrendsRead)));
        RpcException? refusal = null;
        await Eventually.TrueAsync(
            async () =>
            {
                refusal = await RefusalAsync(server.Access);
                return refusal is not null;
            });

        Assert.Equal((StatusCode.ResourceExhausted, "CALLS_PER_SECOND"), (refusal!.StatusCode, ReasonOf(refusal)));
        Assert.InRange(refusal.GetRpcStatus()!.GetDetail<RetryInfo>()!.RetryDelay.ToTimeSpan(), TimeSpan.FromTicks(1), TimeSpan.FromSeconds(1));
        Assert.Null(await RefusalAsync(other)); // another key has its own limit
        await Eventually.TrueAsync(async () => await RefusalAsync(server.Access) is null);
    }

    [Fact]
    public async Task A_stream_counts_as_one_call_for_as_long_as_it_is_open()
    {
        await using var server = await StartAsync(new AccessSettings { CallsAtOnce = 1 });
        using (var stream = server.Intake.StreamRecords())
        {
            await stream.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Reading("r", "ZZ-A01", 1, 1) });
            Assert.True(await stream.ResponseStream.MoveNext(CancellationToken.None)); // refused or not: the stream is open

            var refusal = await RefusalAsync(server.Access);
            Assert.Equal((StatusCode.ResourceExhausted, "CALLS_AT_ONCE"), (refusal!.StatusCode, ReasonOf(refusal)));
            Assert.NotNull(refusal.GetRpcStatus()!.GetDetail<RetryInfo>());
            using var overJson = await server.Http.GetAsync("v1/keys:own");
            Assert.Equal(HttpStatusCode.TooManyRequests, overJson.StatusCode);
            await stream.RequestStream.CompleteAsync();
            Assert.False(await stream.ResponseStream.MoveNext(CancellationToken.None));
        }

        await Eventually.TrueAsync(async () => await RefusalAsync(server.Access) is null);
    }

    [Fact] // HTTP/2 has a limit of streams of its own, 100 by habit: it must not be met first, or a caller waits for itself.
    public async Task Too_many_streams_on_one_connection_are_refused_and_do_not_wait()
    {
        await using var server = await StartAsync(new AccessSettings());
        using var handler = new SocketsHttpHandler { EnableMultipleHttp2Connections = false };
        using var channel = GrpcChannel.ForAddress(server.GrpcAddress, new GrpcChannelOptions { HttpHandler = handler });
        var intake = new IntakeService.IntakeServiceClient(channel);
        var headers = new Metadata { { "authorization", $"Bearer {server.Key}" } };
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        var streams = new List<AsyncDuplexStreamingCall<StreamRecordsRequest, StreamRecordsResponse>>();
        try
        {
            for (var i = 0; i < new AccessSettings().CallsAtOnce; i++)
            {
                streams.Add(intake.StreamRecords(headers, cancellationToken: patience.Token));
                await streams[i].RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Reading("r", "ZZ-A01", 1, 1) }, patience.Token);
                Assert.True(await streams[i].ResponseStream.MoveNext(patience.Token));
            }

            var refusal = await Assert.ThrowsAsync<RpcException>(() => new AccessService.AccessServiceClient(channel)
                .GetOwnKeyAsync(new GetOwnKeyRequest(), headers, cancellationToken: patience.Token).ResponseAsync);
            Assert.Equal((StatusCode.ResourceExhausted, "CALLS_AT_ONCE"), (refusal.StatusCode, ReasonOf(refusal)));
        }
        finally
        {
            streams.ForEach(stream => stream.Dispose());
        }
    }

    [Fact]
    public async Task Calls_without_a_good_key_are_counted_logged_up_to_a_limit_and_never_hold_up_a_good_one()
    {
        const int Allowed = 3;
        const int Sent = 10;
        using var log = new LineLog();
        var counted = new ConcurrentQueue<string>();
        using var meters = new MeterListener
        {
            InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Name == "fleettrend.calls.refused")
                    listener.EnableMeasurementEvents(instrument);
            },
        };
        meters.SetMeasurementEventCallback<long>((_, count, tags, _) =>
        {
            Assert.Equal(1, count);
            counted.Enqueue($"{tags[0].Key}={tags[0].Value}");
        });
        meters.Start();
        await using var server = await StartAsync(new AccessSettings { RefusedCallsPerMinute = Allowed }, log);
        var wrong = new AccessService.AccessServiceClient(server.ChannelWith(KeyText.Create().Reveal()));

        var refusals = new List<RpcException>();
        for (var i = 0; i < Sent; i++)
            refusals.Add((await RefusalAsync(wrong))!);

        Assert.Equal(Enumerable.Repeat("KEY_UNKNOWN", Allowed).Concat(Enumerable.Repeat("REFUSED_CALLS", Sent - Allowed)), refusals.Select(ReasonOf));
        Assert.Equal(StatusCode.ResourceExhausted, refusals[^1].StatusCode);
        Assert.InRange(refusals[^1].GetRpcStatus()!.GetDetail<RetryInfo>()!.RetryDelay.ToTimeSpan(), TimeSpan.FromTicks(1), TimeSpan.FromMinutes(1));
        Assert.Null(await RefusalAsync(server.Access)); // from the same address
        var lines = log.Lines.Where(line => line.Contains(" 3201:", StringComparison.Ordinal)).ToList();
        Assert.Equal(Allowed, lines.Count);
        Assert.All(lines, line => Assert.Contains(
            "Refused call of /fleettrend.v1.AccessService/GetOwnKey from 127.0.0.1: KEY_UNKNOWN (key none)", line, StringComparison.Ordinal));
        Assert.Single(log.Lines, line => line.Contains(" 3202:", StringComparison.Ordinal));
        Assert.Equal(refusals.Select(refusal => $"reason={ReasonOf(refusal)}"), counted);
    }

    [Fact]
    public async Task A_call_beyond_the_scope_of_its_key_is_logged_with_the_key_it_came_with()
    {
        using var log = new LineLog();
        await using var server = await StartAsync(new AccessSettings(), log);
        var key = await server.CreateKeyAsync(null, KeyScope.TrendsRead);

        await Assert.ThrowsAsync<RpcException>(
            () => new AccessService.AccessServiceClient(server.ChannelWith(key)).ListKeysAsync(new ListKeysRequest()).ResponseAsync);

        Assert.Single(log.Lines, line => line.Contains($"SCOPE_REQUIRED (key {key.Split('_')[1]})", StringComparison.Ordinal));
    }

    private Task<ApiServer> StartAsync(AccessSettings access, LineLog? log = null) => ApiServer.StartAsync(
        postgres, settings => settings with { Access = access },
        builder =>
        {
            if (log is not null)
                builder.Logging.AddProvider(log);
        });

    private static async Task<RpcException?> RefusalAsync(AccessService.AccessServiceClient access)
    {
        try
        {
            await access.GetOwnKeyAsync(new GetOwnKeyRequest());
            return null;
        }
        catch (RpcException refusal)
        {
            return refusal;
        }
    }

    private static string ReasonOf(RpcException refusal) => refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason;
}
