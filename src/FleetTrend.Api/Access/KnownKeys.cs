using System.Collections.Concurrent;
using FleetTrend.Store.Keys;

namespace FleetTrend.Api.Access;

/// <summary>
/// The keys, kept at hand: a call with a known one costs no query, and calls with unknown ones, however many, keep one connection
/// busy at most. A key made elsewhere counts here at once, one revoked elsewhere after <see cref="MostAge"/> no more.
/// </summary>
internal sealed class KnownKeys(KeyStore store, TimeProvider clock) : IDisposable
{
    /// <summary>How old what is at hand may be.</summary>
    public static readonly TimeSpan MostAge = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan BetweenMarks = TimeSpan.FromMinutes(1);

    private readonly SemaphoreSlim reading = new(1, 1);
    private readonly ConcurrentDictionary<string, long> marked = new(StringComparer.Ordinal);
    private volatile Reading? lastReading;

    /// <summary>The key of that identifier, revoked or not; null where there is none.</summary>
    public async ValueTask<StoredKey?> FindAsync(string id, CancellationToken ct)
    {
        var now = clock.GetTimestamp();
        var keys = await ReadAsync(now - (long)(MostAge.TotalSeconds * clock.TimestampFrequency), ct);

        // An unknown key may have been made on another server a moment ago.
        return keys.TryGetValue(id, out var key) ? key : (await ReadAsync(now, ct)).GetValueOrDefault(id);
    }

    /// <summary>Has the keys read anew: this process has changed one.</summary>
    public async Task ForgetAsync()
    {
        await reading.WaitAsync(); // a reading under way may be from before the change
        lastReading = null;
        reading.Release();
    }

    /// <summary>Notes the use of a key, once a minute.</summary>
    public async ValueTask MarkUsedAsync(string id, CancellationToken ct)
    {
        var now = clock.GetTimestamp();
        if (marked.TryGetValue(id, out var before) && clock.GetElapsedTime(before, now) < BetweenMarks)
            return;
        marked[id] = now;
        await store.MarkUsedAsync(id, ct);
    }

    /// <inheritdoc/>
    public void Dispose() => reading.Dispose();

    /// <summary>The keys from a reading that began at that time or later; callers that wait share one.</summary>
    private async ValueTask<IReadOnlyDictionary<string, StoredKey>> ReadAsync(long since, CancellationToken ct)
    {
        if (lastReading is { } last && last.Time >= since)
            return last.Keys;
        await reading.WaitAsync(ct);
        try
        {
            if (lastReading is { } other && other.Time >= since)
                return other.Keys;
            var now = clock.GetTimestamp();
            var keys = await store.ReadAllAsync(ct);
            lastReading = new Reading(keys, now);
            return keys;
        }
        finally
        {
            reading.Release();
        }
    }

    private sealed record Reading(IReadOnlyDictionary<string, StoredKey> Keys, long Time);
}
