using System.Diagnostics;
using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;
using Xunit.Abstractions;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>The stream of records: each acknowledged once, after it is durable; a bad one stops nothing.</summary>
[Collection(SharedPostgres.Name)]
public sealed class StreamTests(PostgresFixture postgres, ITestOutputHelper output) : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Of_5000_records_each_is_acknowledged_once_and_stored()
    {
        const int Count = 5_000;
        var records = Enumerable.Range(0, Count).Select(i => i < 50
            ? ShopCards.Aircraft($"ZZ-S{i:000}")
            : ShopCards.Reading($"reading {i}", $"ZZ-S{i % 50:000}", i / 50, i));
        var started = Stopwatch.GetTimestamp();

        var acknowledged = await StreamAsync(records);

        output.WriteLine($"{Count / Stopwatch.GetElapsedTime(started).TotalSeconds:0} records/s acknowledged");
        Assert.Equal(Enumerable.Range(0, Count).Select(i => (long)i), acknowledged.Select(a => a.Sequence));
        Assert.All(acknowledged, a => Assert.Equal(RecordState.Accepted, a.Outcome.State));
        Assert.Equal(Count, await CountAsync("records"));
        Assert.All(await StreamAsync(records), a => Assert.Equal(RecordState.Unchanged, a.Outcome.State));
        Assert.Equal(Count, await CountAsync("records"));
    }

    [Fact]
    public async Task A_bad_record_in_a_stream_is_refused_and_the_others_are_stored()
    {
        var acknowledged = await StreamAsync(
        [
            ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card 1"), ShopCards.Finding("card 2", location: "exhaust/none/here"),
            new Record(), ShopCards.Finding("card 3", hours: double.NaN), ShopCards.Finding("card 4"),
        ]);

        Assert.Equal(
            ["", "", "LOCATION_NOT_IN_LAYOUT", "FIELD_REQUIRED", "NUMBER_NOT_FINITE", ""],
            acknowledged.Select(a => a.Outcome.Error?.GetDetail<ErrorInfo>()?.Reason ?? ""));
        Assert.Equal(2, await CountAsync("findings"));
    }

    [Fact]
    public async Task Records_too_large_are_refused_one_by_one_and_the_others_are_stored()
    {
        var large = ShopCards.Finding("card large");
        large.Finding.Note = new string('x', 300_000);
        var acknowledged = await StreamAsync(
            [ShopCards.Aircraft("ZZ-A01"), large, ShopCards.Finding("card 1"), large, large, ShopCards.Finding("card 2")]);

        Assert.Equal(
            ["", "RECORD_TOO_LARGE", "", "RECORD_TOO_LARGE", "RECORD_TOO_LARGE", ""],
            acknowledged.Select(a => a.Outcome.Error?.GetDetail<ErrorInfo>()?.Reason ?? ""));
        Assert.Equal(2, await CountAsync("findings"));
    }

    [Fact]
    public async Task A_message_beyond_what_is_read_ends_the_stream_with_the_limit_and_keeps_what_came_before()
    {
        using var patience = new CancellationTokenSource(Patience);
        using var call = server.Intake.StreamRecords(cancellationToken: patience.Token);
        var large = ShopCards.Finding("card 1");
        large.Finding.Note = new string('x', 9 * 1024 * 1024);
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        Assert.True(await call.ResponseStream.MoveNext(patience.Token));
        var writing = call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = large });
        var refusal = await Assert.ThrowsAsync<RpcException>(() => call.ResponseStream.MoveNext(patience.Token));
        await Xunit.Record.ExceptionAsync(() => writing); // the server answers without reading all of it, which may break the writing

        var info = refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!;
        Assert.Equal((StatusCode.ResourceExhausted, "MESSAGE_TOO_LARGE"), (refusal.StatusCode, info.Reason));
        Assert.Equal("must be a message of up to 4,194,304 bytes", info.Metadata["rule"]);
        Assert.Equal(1, await CountAsync("records"));
    }

    [Fact]
    public async Task A_record_is_acknowledged_while_the_stream_stays_open()
    {
        using var patience = new CancellationTokenSource(Patience);
        using var call = server.Intake.StreamRecords(cancellationToken: patience.Token);
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = 7, Record = ShopCards.Aircraft("ZZ-A01") });

        Assert.True(await call.ResponseStream.MoveNext(patience.Token));

        Assert.Equal((7L, RecordState.Accepted), (call.ResponseStream.Current.Sequence, call.ResponseStream.Current.Outcome.State));
        Assert.Equal(1, await CountAsync("records"));
        await call.RequestStream.CompleteAsync();
        Assert.False(await call.ResponseStream.MoveNext(patience.Token));
    }

    [Fact]
    public async Task A_sender_who_reads_no_acknowledgement_is_slowed_down_and_loses_nothing()
    {
        using var patience = new CancellationTokenSource(Patience);
        using var call = server.Intake.StreamRecords(cancellationToken: patience.Token);
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        // Acknowledgements fill the windows of HTTP/2; then writing must wait until somebody reads.
        var sending = Task.Run(async () =>
        {
            for (var i = 1; i <= 20_000; i++)
                await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = i, Record = ShopCards.Reading($"r{i}", "ZZ-A01", 1, 1) });
            await call.RequestStream.CompleteAsync();
        }, patience.Token);

        var count = 0;
        while (await call.ResponseStream.MoveNext(patience.Token))
            Assert.Equal(count++, call.ResponseStream.Current.Sequence);
        await sending;

        Assert.Equal(20_001, count);
    }

    [Fact]
    public async Task A_stream_that_its_sender_breaks_off_keeps_what_was_acknowledged()
    {
        using var breaking = new CancellationTokenSource();
        using (var call = server.Intake.StreamRecords(cancellationToken: breaking.Token))
        {
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Aircraft("ZZ-A01") });
            Assert.True(await call.ResponseStream.MoveNext(CancellationToken.None));
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = 1, Record = ShopCards.Finding("card 1") });
            await breaking.CancelAsync();
        }

        var again = await StreamAsync([ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card 1")]);

        Assert.Equal(RecordState.Unchanged, again[0].Outcome.State);
        Assert.Equal(1, await CountAsync("findings"));
    }

    private async Task<List<StreamRecordsResponse>> StreamAsync(IEnumerable<Record> records)
    {
        using var patience = new CancellationTokenSource(Patience);
        using var call = server.Intake.StreamRecords(cancellationToken: patience.Token);
        var reading = Task.Run(async () =>
        {
            var all = new List<StreamRecordsResponse>();
            while (await call.ResponseStream.MoveNext(patience.Token))
                all.Add(call.ResponseStream.Current);
            return all;
        });
        foreach (var (index, record) in records.Index())
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = index, Record = record });
        await call.RequestStream.CompleteAsync();
        return await reading;
    }

    private async Task<long> CountAsync(string table)
    {
        await using var command = server.Database.DataSource.CreateCommand($"select count(*) from {table}");
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
