using System.Runtime.CompilerServices;
using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Client;

/// <summary>
/// Pushes records through the two-way stream, with a bounded number in flight. A break costs time and nothing else: after a
/// growing pause it connects again and sends exactly what has no outcome, in the order given. A record's key makes that safe.
/// One pusher may run several pushes, also at the same time.
/// </summary>
public sealed class RecordPusher
{
    private readonly IntakeService.IntakeServiceClient intake;
    private readonly PushOptions options;

    /// <summary>Makes a pusher.</summary>
    /// <param name="channel">An open channel; the caller disposes it.</param>
    /// <param name="options">How to push; null takes the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public RecordPusher(ChannelBase channel, PushOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(channel);
        this.options = options ?? new PushOptions();
        if (this.options.Problem() is { } problem)
            throw new ArgumentOutOfRangeException(nameof(options), problem);
        intake = new IntakeService.IntakeServiceClient(channel);
    }

    /// <summary>Pushes records; each comes back once with its outcome, in the order in which the server acknowledges.</summary>
    /// <param name="records">
    /// What to push; read as fast as outcomes are taken. The caller must not change a record before its outcome is here. If
    /// reading it fails, outcomes of what was read before still come, then the failure.
    /// </param>
    /// <param name="ct">Cancels the push; what was acknowledged stays.</param>
    /// <exception cref="PushStoppedException">The server refuses the call, or did not come back in time.</exception>
    /// <exception cref="OperationCanceledException">The push was cancelled.</exception>
    public async IAsyncEnumerable<PushedRecord> PushAsync(
        IAsyncEnumerable<Record> records, [EnumeratorCancellation] CancellationToken ct = default)
    {
        ArgumentNullException.ThrowIfNull(records);
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(ct);
        using var push = new Push(intake, options);
        var running = push.RunAsync(records, ending.Token);
        try
        {
            await foreach (var pushed in push.Outcomes.ReadAllAsync(ct))
            {
                yield return pushed;
                push.MakeRoom();
            }
        }
        finally
        {
            await ending.CancelAsync();
            await running;
        }
    }
}
