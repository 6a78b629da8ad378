using System.Threading.Channels;

namespace FleetTrend.Intake.HeldRecords;

/// <summary>Says inside one process that records that are held may be accepted now. It can be missed, as when the process ends:
/// whoever waits also looks from time to time.</summary>
public sealed class ReleaseSignal
{
    private readonly Channel<bool> set = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    /// <summary>Wakes who waits, or the next who does.</summary>
    public void Set() => set.Writer.TryWrite(true);

    /// <summary>Waits for the signal, and no longer than <paramref name="limit"/>.</summary>
    public async Task WaitAsync(TimeSpan limit, CancellationToken ct)
    {
        using var waiting = CancellationTokenSource.CreateLinkedTokenSource(ct);
        waiting.CancelAfter(limit);
        try
        {
            await set.Reader.ReadAsync(waiting.Token);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            // The time is over: no signal came, or it came in another process.
        }
    }
}
