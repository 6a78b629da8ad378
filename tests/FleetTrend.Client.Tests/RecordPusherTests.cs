using System.Collections.Concurrent;
using System.Diagnostics;
using FleetTrend.Contracts.V1;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.Client.Tests;

/// <summary>The push against a server that breaks at exact places. What must come out follows from the script of each test.</summary>
public sealed class RecordPusherTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Brief = TimeSpan.FromMilliseconds(5);

    private readonly ConcurrentQueue<Interruption> interruptions = new();

    private PushOptions Quick => new() { FirstPause = Brief, LongestPause = Brief, Interruptions = new Recorded(interruptions) };

    [Fact]
    public async Task After_a_break_exactly_what_has_no_outcome_is_sent_again_in_order_and_then_the_rest()
    {
        await using var server = await ScriptedServer.StartAsync(
            async (requests, responses, context) =>
            {
                for (var i = 0; i < 5; i++)
                {
                    await requests.MoveNext(context.CancellationToken);
                    if (requests.Current.Sequence is 1 or 3)
                        await responses.WriteAsync(ScriptedServer.Accepted(requests.Current));
                }

                throw new RpcException(new Grpc.Core.Status(StatusCode.Unavailable, "stopping"));
            },
            ScriptedServer.AcknowledgeAllAsync);

        var pushed = await PushAsync(server, 8, Quick with { MaxInFlight = 5 });

        Assert.Equal([0L, 1, 2, 3, 4, 5, 6, 7], pushed.Select(p => p.Index).Order());
        Assert.All(pushed, p => Assert.Equal($"r{p.Index}", p.Outcome.Key.SourceRecordId));
        Assert.Equal([0L, 2, 4], server.Played.Arrived[1].Take(3));
        Assert.Equal(pushed.Select(p => p.Index).Except([1, 3]), server.Played.Arrived[1]);
        Assert.Equal(StatusCode.Unavailable, Assert.Single(interruptions).Cause.StatusCode);
    }

    [Theory]
    [InlineData(StatusCode.Unavailable, false)]
    [InlineData(StatusCode.Cancelled, false)]
    [InlineData(StatusCode.ResourceExhausted, true)]
    [InlineData(StatusCode.OK, false)] // the server ends the stream as if all were done
    public async Task A_break_that_may_pass_is_survived(StatusCode code, bool withPause)
    {
        await using var server = await ScriptedServer.StartAsync(
            async (requests, responses, context) =>
            {
                await requests.MoveNext(context.CancellationToken);
                await responses.WriteAsync(ScriptedServer.Accepted(requests.Current));
                if (code != StatusCode.OK)
                    throw Error(code, withPause ? new RetryInfo { RetryDelay = Brief.ToDuration() } : null);
            },
            ScriptedServer.AcknowledgeAllAsync);

        Assert.Equal(100, (await PushAsync(server, 100, Quick)).DistinctBy(p => p.Index).Count());
        Assert.Single(interruptions);
    }

    [Fact]
    public async Task A_pause_that_the_server_asks_for_is_kept()
    {
        var asked = TimeSpan.FromMilliseconds(300);
        await using var server = await ScriptedServer.StartAsync(
            (_, _, _) => throw Error(StatusCode.ResourceExhausted, new RetryInfo { RetryDelay = asked.ToDuration() }),
            ScriptedServer.AcknowledgeAllAsync);
        var started = Stopwatch.GetTimestamp();

        await PushAsync(server, 3, Quick);

        Assert.True(Stopwatch.GetElapsedTime(started) >= asked);
        Assert.InRange(Assert.Single(interruptions).Pause, asked, asked * 1.1);
    }

    [Theory]
    [InlineData(StatusCode.Unauthenticated, "KEY_REVOKED")]
    [InlineData(StatusCode.PermissionDenied, "SCOPE_REQUIRED")]
    [InlineData(StatusCode.ResourceExhausted, "MESSAGE_TOO_LARGE")]
    public async Task A_call_that_is_refused_stops_the_push_at_once_and_names_what_was_not_acknowledged(StatusCode code, string reason)
    {
        await using var server = await ScriptedServer.StartAsync(async (requests, responses, context) =>
        {
            await requests.MoveNext(context.CancellationToken);
            await responses.WriteAsync(ScriptedServer.Accepted(requests.Current));
            await requests.MoveNext(context.CancellationToken);
            throw Error(code, new ErrorInfo { Reason = reason, Domain = "fleettrend" });
        });
        var taken = new List<PushedRecord>();

        var stopped = await Assert.ThrowsAsync<PushStoppedException>(() => PushAsync(server, 2, Quick, taken));

        Assert.Equal((code, reason), (stopped.Status.StatusCode, stopped.Reason));
        Assert.Equal("r0", Assert.Single(taken).Record.Key.SourceRecordId);
        Assert.Equal("r1", Assert.Single(stopped.Unacknowledged).Key.SourceRecordId);
        Assert.Empty(interruptions);
    }

    [Fact]
    public async Task A_server_that_does_not_come_back_is_given_up()
    {
        Uri address;
        await using (var server = await ScriptedServer.StartAsync(ScriptedServer.AcknowledgeAllAsync))
            address = server.Address;
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = address });

        var stopped = await Assert.ThrowsAsync<PushStoppedException>(async () =>
            await new RecordPusher(channel, Quick with { GiveUpAfter = TimeSpan.FromMilliseconds(200) }).PushAsync(Records(1)).CountAsync());

        Assert.Equal(StatusCode.Unavailable, stopped.Status.StatusCode);
        Assert.NotEmpty(interruptions);
    }

    [Fact]
    public async Task A_server_that_falls_silent_is_left_for_another_connection()
    {
        await using var server = await ScriptedServer.StartAsync(
            (_, _, context) => Task.Delay(Timeout.Infinite, context.CancellationToken),
            ScriptedServer.AcknowledgeAllAsync);

        Assert.Equal(3, (await PushAsync(server, 3, Quick with { AnswerLimit = TimeSpan.FromMilliseconds(200) })).Count);
        Assert.Contains("No outcome within", Assert.Single(interruptions).Cause.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_more_records_are_read_than_may_be_in_flight()
    {
        await using var server = await ScriptedServer.StartAsync(ScriptedServer.AcknowledgeAllAsync);
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.Address });
        var read = 0;
        var taken = 0;

        await foreach (var _ in new RecordPusher(channel, Quick with { MaxInFlight = 10 }).PushAsync(Records(500, () => read++)))
        {
            taken++;
            Assert.InRange(read, taken, taken + 12); // one waits between source and stream, one is in the hand of the source
        }

        Assert.Equal((500, 500), (taken, read));
    }

    [Fact]
    public async Task A_source_that_fails_still_gets_the_outcomes_of_what_it_gave()
    {
        await using var server = await ScriptedServer.StartAsync(ScriptedServer.AcknowledgeAllAsync);
        var taken = new List<PushedRecord>();
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.Address });

        var fault = await Assert.ThrowsAsync<InvalidDataException>(async () =>
        {
            await foreach (var pushed in new RecordPusher(channel, Quick).PushAsync(Records(20, () => { }, failAfter: true)))
                taken.Add(pushed);
        });

        Assert.Equal("the file broke off", fault.Message);
        Assert.Equal(20, taken.Count);
    }

    [Fact]
    public async Task Nothing_to_push_needs_no_server()
    {
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = new Uri("http://127.0.0.1:1") });
        Assert.Equal(0, await new RecordPusher(channel, Quick).PushAsync(Records(0)).CountAsync());
    }

    [Fact]
    public async Task A_push_can_be_cancelled_and_left()
    {
        await using var server = await ScriptedServer.StartAsync(ScriptedServer.AcknowledgeAllAsync);
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.Address });
        using var cancel = new CancellationTokenSource();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            await foreach (var _ in new RecordPusher(channel, Quick).PushAsync(Records(10_000), cancel.Token))
                await cancel.CancelAsync();
        });
        await foreach (var _ in new RecordPusher(channel, Quick).PushAsync(Records(10_000)))
            break;
    }

    [Fact]
    public void Options_out_of_range_are_refused()
    {
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = new Uri("http://127.0.0.1:1") });
        Assert.Contains("MaxInFlight 0", Assert.Throws<ArgumentOutOfRangeException>(() => new RecordPusher(channel, Quick with { MaxInFlight = 0 })).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new RecordPusher(channel, Quick with { LongestPause = TimeSpan.Zero }));
    }

    private static async IAsyncEnumerable<Record> Records(int count, System.Action? onRead = null, bool failAfter = false)
    {
        for (var i = 0; i < count; i++)
        {
            onRead?.Invoke();
            yield return new Record { Key = new RecordKey { Source = "shop", SourceRecordId = $"r{i}", Revision = 1 } };
        }

        await Task.CompletedTask;
        if (failAfter)
            throw new InvalidDataException("the file broke off");
    }

    private static async Task<List<PushedRecord>> PushAsync(ScriptedServer server, int count, PushOptions options, List<PushedRecord>? taken = null)
    {
        taken ??= [];
        using var patience = new CancellationTokenSource(Patience);
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.Address });
        await foreach (var pushed in new RecordPusher(channel, options).PushAsync(Records(count), patience.Token))
            taken.Add(pushed);
        return taken;
    }

    private static RpcException Error(StatusCode code, Google.Protobuf.IMessage? detail)
    {
        var status = new Google.Rpc.Status { Code = (int)code, Message = "as the script says" };
        if (detail is not null)
            status.Details.Add(Any.Pack(detail));
        return status.ToRpcException();
    }

    private sealed class Recorded(ConcurrentQueue<Interruption> all) : IProgress<Interruption>
    {
        public void Report(Interruption value) => all.Enqueue(value);
    }
}
