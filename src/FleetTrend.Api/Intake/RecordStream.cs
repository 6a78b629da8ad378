using System.Threading.Channels;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using Grpc.Core;

namespace FleetTrend.Api.Intake;

/// <summary>
/// One stream of records: reading and writing overlap, what waits is written together, and each record is acknowledged
/// once its transaction has committed. Reading pauses while <see cref="MostWaiting"/> wait, and HTTP/2 makes the sender pause.
/// </summary>
internal sealed class RecordStream(RecordIntake intake, Func<IReadOnlyList<RecordOutcome>, int> onOutcomes)
{
    /// <summary>Records read and not yet taken up.</summary>
    public const int MostWaiting = 1_000;

    /// <summary>Records per transaction.</summary>
    public const int MostTogether = 500;

    private readonly Channel<StreamRecordsRequest> _waiting = Channel.CreateBounded<StreamRecordsRequest>(
        new BoundedChannelOptions(MostWaiting) { SingleReader = true, SingleWriter = true });

    private readonly CheckedAircraft _checked = new();

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

    private Task<IReadOnlyList<RecordOutcome>> PushAsync(List<StreamRecordsRequest> together, CancellationToken ct)
    {
        IReadOnlyList<Record> records = [.. together.Select(r => r.Record ?? new Record())];
        return together[0].ValidateOnly ? intake.CheckAsync(records, _checked, ct) : intake.PushAsync(records, ct);
    }

    private async Task ReadAsync(IAsyncStreamReader<StreamRecordsRequest> requests, CancellationToken ct)
    {
        try
        {
            while (await requests.MoveNext(ct))
                await _waiting.Writer.WriteAsync(requests.Current, ct);
            _waiting.Writer.Complete();
        }
        catch (Exception broken) // it surfaces where the channel is read, after what was read before
        {
            _waiting.Writer.Complete(broken);
        }
    }

    private async Task WriteAsync(IServerStreamWriter<StreamRecordsResponse> responses, CancellationToken ct)
    {
        var together = new List<StreamRecordsRequest>(MostTogether);
        while (await _waiting.Reader.WaitToReadAsync(ct))
        {
            together.Clear();
            while (together.Count < MostTogether && _waiting.Reader.TryPeek(out var next)
                && (together.Count == 0 || next.ValidateOnly == together[0].ValidateOnly) && _waiting.Reader.TryRead(out var request))
                together.Add(request);
            var outcomes = await PushAsync(together, ct);
            onOutcomes(outcomes);
            for (var i = 0; i < outcomes.Count; i++)
            {
                await responses.WriteAsync(new StreamRecordsResponse { Sequence = together[i].Sequence, Outcome = outcomes[i] }, ct);
                Acknowledged++;
            }
        }
    }
}
