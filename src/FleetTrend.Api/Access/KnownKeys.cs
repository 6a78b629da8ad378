using System.Collections.Concurrent;
using FleetTrend.Store.Keys;

namespace FleetTrend.Api.Access;

/// <summary>
/// The keys, kept at hand: a call costs no query, and callers with bad keys cannot make the database work. A key that was made
/// or revoked elsewhere counts here after <see cref="MostAge"/>.
/// </summary>
internal sealed class KnownKeys(KeyStore store, TimeProvider clock) : IDisposable
{
    /// <summary>How old what is at hand may be.</summary>
    public static readonly TimeSpan MostAge = TimeSpan.FromSeconds(2);

    // An unknown key may have been made on another server a moment ago.
    private static readonly TimeSpan MostAgeForUnknown = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan BetweenMarks = TimeSpan.FromMinutes(1);

    private readonly SemaphoreSlim _reading = new(1, 1);
    private readonly ConcurrentDictionary<string, long> _marked = new(StringComparer.Ordinal);
    private volatile Reading? _last;

    /// <summary>The key of that identifier, revoked or not; null where there is none.</summary>
    public async ValueTask<StoredKey?> FindAsync(string id, CancellationToken ct)
    {
        var keys = await ReadAsync(MostAge, ct);
        return keys.TryGetValue(id, out var key) ? key : (await ReadAsync(MostAgeForUnknown, ct)).GetValueOrDefault(id);
    }

    /// <summary>Has the keys read anew: this process has changed one.</summary>
    public async Task ForgetAsync()
    {
        await _reading.WaitAsync(); // a reading under way may be from before the change
        _last = null;
        _reading.Release();
    }

    /// <summary>Notes the use of a key, once a minute.</summary>
    public async ValueTask MarkUsedAsync(string id, CancellationToken ct)
    {
        var now = clock.GetTimestamp();
        if (_marked.TryGetValue(id, out var before) && clock.GetElapsedTime(before, now) < BetweenMarks)
            return;
        _marked[id] = now;
        await store.MarkUsedAsync(id, ct);
    }

    /// <inheritdoc/>
    public void Dispose() => _reading.Dispose();

    private async ValueTask<IReadOnlyDictionary<string, StoredKey>> ReadAsync(TimeSpan mostAge, CancellationToken ct)
    {
        if (_last is { } last && clock.GetElapsedTime(last.Time) < mostAge)
            return last.Keys;
        await _reading.WaitAsync(ct);
        try
        {
            if (_last is { } other && clock.GetElapsedTime(other.Time) < mostAge)
                return other.Keys;
            var now = clock.GetTimestamp();
            var keys = await store.ReadAllAsync(ct);
            _last = new Reading(keys, now);
            return keys;
        }
        finally
        {
            _reading.Release();
        }
    }

    private sealed record Reading(IReadOnlyDictionary<string, StoredKey> Keys, long Time);
}
