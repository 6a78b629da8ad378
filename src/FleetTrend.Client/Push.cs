using System.Diagnostics;
using System.Threading.Channels;
using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Client;

/// <summary>One push: its source, what is in flight, and the connections it takes.</summary>
internal sealed class Push(IntakeService.IntakeServiceClient intake, PushOptions options) : IDisposable
{
    private readonly InFlight inFlight = new();
    private readonly SemaphoreSlim room = new(options.MaxInFlight);
    private readonly Channel<Record> source = Channel.CreateBounded<Record>(
        new BoundedChannelOptions(1) { SingleReader = true, SingleWriter = true });

    // Bounded by the room: an outcome that nobody takes keeps its record's place.
    private readonly Channel<PushedRecord> outcomes = Channel.CreateUnbounded<PushedRecord>(
        new UnboundedChannelOptions { SingleReader = true, SingleWriter = true });

    private Exception? sourceFault;
    private volatile bool allSent;
    private int attempt;
    private long failingSince;

    /// <summary>Outcomes as they come; ends with the push, with its failure where it failed.</summary>
    public ChannelReader<PushedRecord> Outcomes => outcomes.Reader;

    /// <summary>An outcome was taken: one more record may be sent.</summary>
    public void MakeRoom() => room.Release();

    /// <summary>Runs until each record has an outcome, or the push fails; never throws.</summary>
    public async Task RunAsync(IAsyncEnumerable<Record> records, CancellationToken ct)
    {
        var reading = ReadSourceAsync(records, ct);
        try
        {
            while (!await HasAllAsync(ct))
                await Task.Delay(PauseAfter(await StreamAsync(ct)), ct);
            await reading;
            outcomes.Writer.Complete(sourceFault);
        }
        catch (Exception failure) // handed to whoever reads the outcomes
        {
            outcomes.Writer.Complete(failure);
            source.Writer.TryComplete();
            await reading;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => room.Dispose();

    private async Task ReadSourceAsync(IAsyncEnumerable<Record> records, CancellationToken ct)
    {
        try
        {
            await foreach (var record in records.WithCancellation(ct))
                await source.Writer.WriteAsync(record ?? throw new ArgumentException("A record is null.", nameof(records)), ct);
        }
        catch (ChannelClosedException)
        {
            // The push has failed; nobody reads on.
        }
        catch (Exception fault)
        {
            sourceFault = fault;
        }

        source.Writer.TryComplete();
    }

    /// <summary>Whether everything has an outcome. Waits for the source while nothing is owed: no connection without need.</summary>
    private async Task<bool> HasAllAsync(CancellationToken ct)
    {
        if (inFlight.Count > 0)
            return false;
        attempt = 0;
        return allSent || !await source.Reader.WaitToReadAsync(ct);
    }

    /// <summary>One connection. Returns why it broke, or null where all that there was has its outcome.</summary>
    private async Task<RpcException?> StreamAsync(CancellationToken ct)
    {
        using var connection = CancellationTokenSource.CreateLinkedTokenSource(ct);
        using var call = intake.StreamRecords(cancellationToken: connection.Token);
        var sending = SendAsync(call.RequestStream, connection.Token);
        try
        {
            while (await HasNextAsync(call.ResponseStream, connection.Token))
                await TakeAsync(call.ResponseStream.Current);
            return allSent && inFlight.Count == 0
                ? null
                : new RpcException(new Status(StatusCode.Unavailable, "The server ended the stream before all was acknowledged."));
        }
        catch (RpcException broken)
        {
            ct.ThrowIfCancellationRequested();
            return broken;
        }
        catch (TimeoutException)
        {
            return new RpcException(new Status(StatusCode.Unavailable, $"No outcome within {options.AnswerLimit.TotalSeconds:0} s."));
        }
        finally
        {
            await connection.CancelAsync();
            // What broke the sending broke the receiving too, and is told there.
            await sending.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task SendAsync(IClientStreamWriter<StreamRecordsRequest> requests, CancellationToken ct)
    {
        foreach (var (sequence, record) in inFlight.All())
            await requests.WriteAsync(Request(sequence, record), ct);
        while (await source.Reader.WaitToReadAsync(ct))
        {
            await room.WaitAsync(ct);
            if (source.Reader.TryRead(out var record)) // no cancellation between here and the next line: nothing gets lost
                await requests.WriteAsync(Request(inFlight.Add(record), record), ct);
            else
                room.Release();
        }

        allSent = true;
        await requests.CompleteAsync();
    }

    private StreamRecordsRequest Request(long sequence, Record record) => new()
    {
        Sequence = sequence,
        Record = record,
        ValidateOnly = options.ValidateOnly,
        HoldUnregistered = options.HoldUnregistered,
    };

    private async Task<bool> HasNextAsync(IAsyncStreamReader<StreamRecordsResponse> answers, CancellationToken ct)
    {
        var next = answers.MoveNext(ct);
        while (true)
        {
            try
            {
                return await next.WaitAsync(options.AnswerLimit, ct);
            }
            catch (TimeoutException) when (inFlight.SilentFor < options.AnswerLimit)
            {
                // Nothing was owed for part of that time.
            }
        }
    }

    private ValueTask TakeAsync(StreamRecordsResponse answer)
    {
        if (inFlight.Take(answer.Sequence) is not { } record)
            return ValueTask.CompletedTask; // not asked on this push
        attempt = 0;
        return outcomes.Writer.WriteAsync(new PushedRecord(answer.Sequence, record, answer.Outcome));
    }

    /// <summary>Time until the next attempt; zero where nothing broke.</summary>
    /// <exception cref="PushStoppedException">There is to be none.</exception>
    private TimeSpan PauseAfter(RpcException? broken)
    {
        if (broken is null)
            return TimeSpan.Zero;
        if (attempt++ == 0)
            failingSince = Stopwatch.GetTimestamp();
        if (!CallError.IsTransient(broken) || Stopwatch.GetElapsedTime(failingSince) > options.GiveUpAfter)
            throw new PushStoppedException(broken, [.. inFlight.All().Select(item => item.Record)]);

        // Random, so that senders that were cut off together do not come back together.
        var longest = Math.Min(options.LongestPause.TotalSeconds, options.FirstPause.TotalSeconds * Math.Pow(2, attempt - 1));
        var pause = TimeSpan.FromSeconds(longest * (0.5 + (0.5 * Random.Shared.NextDouble())));
        if (CallError.RetryDelay(broken) is { } asked && asked > pause)
            pause = asked * (1 + (0.1 * Random.Shared.NextDouble()));
        options.Interruptions?.Report(new Interruption(broken.Status, attempt, pause, inFlight.Count));
        return pause;
    }
}
