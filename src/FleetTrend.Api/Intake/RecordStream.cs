using System.Threading.Channels;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using Grpc.Core;

namespace FleetTrend.Api.Intake;

/// <summary>
/// One stream of records: what waits is parsed together while the records before it are being stored, and each record is
/// acknowledged once its transaction has committed. Reading pauses while <see cref="MostWaiting"/> wait, and HTTP/2 makes the sender pause.
/// </summary>
internal sealed class RecordStream(RecordIntake intake, string ownSource, Func<IReadOnlyList<RecordOutcome>, int> onOutcomes)
    : IDisposable
{
    /// <summary>Records read and not yet taken up.</summary>
    public const int MostWaiting = 2_000;

    /// <summary>Records per transaction.</summary>
    public const int MostTogether = RecordIntake.MaxRecords;

    private static readonly WriteOptions Buffered = new(WriteFlags.BufferHint);

    private static readonly Task<IReadOnlyList<RecordOutcome>> NothingStored = Task.FromResult<IReadOnlyList<RecordOutcome>>([]);

    private readonly Channel<StreamRecordsRequest> waiting = Channel.CreateBounded<StreamRecordsRequest>(
        new BoundedChannelOptions(MostWaiting) { SingleReader = true, SingleWriter = true });

    private readonly CheckedAircraft checkedAircraft = new();

    // Two thousand records of the largest message would be more memory than a server has: of those too large one waits at a time.
    private readonly SemaphoreSlim roomForTooLarge = new(1);

    /// <summary>Records acknowledged so far, refused ones included.</summary>
    public long Acknowledged { get; private set; }

    /// <summary>Runs until the sender completes and everything is acknowledged.</summary>
    public async Task RunAsync(
        IAsyncStreamReader<StreamRecordsRequest> requests, IServerStreamWriter<StreamRecordsResponse> responses, CancellationToken ct)
    {
        // If writing fails, reading must not go on filling a channel that nobody empties.
        using var writing = CancellationTokenSource.CreateLinkedTokenSource(ct);
        var reading = ReadAsync(requests, writing.Token);
        try
        {
            await WriteAsync(responses, ct);
        }
        finally
        {
            await writing.CancelAsync();
            await reading;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => roomForTooLarge.Dispose();

    private async Task ReadAsync(IAsyncStreamReader<StreamRecordsRequest> requests, CancellationToken ct)
    {
        try
        {
            while (await requests.MoveNext(ct))
            {
                if (IsTooLarge(requests.Current))
                    await roomForTooLarge.WaitAsync(ct);
                await waiting.Writer.WriteAsync(requests.Current, ct);
            }

            waiting.Writer.Complete();
        }
        catch (Exception broken) // it surfaces where the channel is read, after what was read before
        {
            waiting.Writer.Complete(broken);
        }
    }

    private async Task WriteAsync(IServerStreamWriter<StreamRecordsResponse> responses, CancellationToken ct)
    {
        // One batch is parsed while two are stored: the database computes for one while the disk is waited for with the other. Records of
        // both with one key meet in its unique index, as those of two senders do. Acknowledgements come in the order sent.
        var storingBefore = NothingStored;
        var storing = NothingStored;
        var acknowledgingBefore = Task.CompletedTask;
        var acknowledging = Task.CompletedTask;
        var mustWait = false;
        try
        {
            while (await waiting.Reader.WaitToReadAsync(ct))
            {
                var together = TakeTogether();
                IReadOnlyList<Record> records = [.. together.Select(r => r.Record ?? new Record())];
                var terms = new PushTerms(ownSource, together[0].HoldUnregistered ? MissingPlace.Hold : MissingPlace.Refuse);
                if (mustWait || together[0].ValidateOnly)
                    await Task.WhenAll(storingBefore, storing);
                var parsed = together[0].ValidateOnly ? null : await intake.ParseAsync(records, terms, ct);
                await storingBefore;
                await acknowledgingBefore;
                storingBefore = storing;
                storing = parsed is null ? intake.CheckAsync(records, terms, checkedAircraft, ct) : intake.StoreAsync(parsed, ct);
                acknowledgingBefore = acknowledging;
                acknowledging = AcknowledgeAsync(acknowledgingBefore, together, storing, responses, ct);

                // An aircraft counts for the records after it once it is stored.
                mustWait = records.Any(r => r.Aircraft is not null);
            }
        }
        finally
        {
            // Whatever broke the stream, nothing of it goes on behind its back.
            await Task.WhenAll(storingBefore, storing, acknowledging).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await acknowledging;
    }

    private List<StreamRecordsRequest> TakeTogether()
    {
        var together = new List<StreamRecordsRequest>(MostTogether);
        while (together.Count < MostTogether && waiting.Reader.TryPeek(out var next)
            && (together.Count == 0 || SameWay(next, together[0])) && waiting.Reader.TryRead(out var request))
        {
            together.Add(request);
        }

        return together;
    }

    private static bool SameWay(StreamRecordsRequest one, StreamRecordsRequest other) =>
        one.ValidateOnly == other.ValidateOnly && one.HoldUnregistered == other.HoldUnregistered;

    private async Task AcknowledgeAsync(
        Task before,
        List<StreamRecordsRequest> together,
        Task<IReadOnlyList<RecordOutcome>> storing,
        IServerStreamWriter<StreamRecordsResponse> responses,
        CancellationToken ct)
    {
        await before;
        var outcomes = await storing;
        onOutcomes(outcomes);
        for (var i = 0; i < outcomes.Count; i++)
        {
            // One flush a batch: the sender gets its acknowledgements no later for it.
            responses.WriteOptions = i < outcomes.Count - 1 ? Buffered : null;
            await responses.WriteAsync(new StreamRecordsResponse { Sequence = together[i].Sequence, Outcome = outcomes[i] }, ct);
            Acknowledged++;
        }

        if (together.Any(IsTooLarge))
            roomForTooLarge.Release();
    }

    private static bool IsTooLarge(StreamRecordsRequest request) => request.CalculateSize() > RecordIntake.MaxRecordBytes;
}
