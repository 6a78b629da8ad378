using FleetTrend.Intake;
using Grpc.Core;
using Npgsql;

namespace FleetTrend.Api.Access;

/// <summary>The requests of a stream, for as long as its key is good: seconds after a revocation, reading ends with
/// UNAUTHENTICATED, and what was read before is still acknowledged.</summary>
internal sealed class WatchedReader<T> : IAsyncStreamReader<T>, IAsyncDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    private readonly IAsyncStreamReader<T> _requests;
    private readonly CancellationTokenSource _revoked = new();
    private readonly CancellationTokenSource _end = new();
    private readonly Task _watching;
    private CancellationTokenSource? _either;
    private CancellationToken _eitherOf;

    public WatchedReader(IAsyncStreamReader<T> requests, string keyId, KnownKeys keys, TimeProvider clock)
    {
        _requests = requests;
        _watching = WatchAsync(keyId, keys, clock);
    }

    /// <inheritdoc/>
    public T Current => _requests.Current;

    /// <inheritdoc/>
    public async Task<bool> MoveNext(CancellationToken cancellationToken)
    {
        // A reader passes the same token each time; one source of both per stream, not per message.
        if (_either is null || _eitherOf != cancellationToken)
        {
            _either?.Dispose();
            _either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, _revoked.Token);
            _eitherOf = cancellationToken;
        }

        try
        {
            return await _requests.MoveNext(_either.Token);
        }
        catch (OperationCanceledException) when (_revoked.IsCancellationRequested)
        {
            throw new CallRefusedException(Reasons.KeyRevoked, "The key was revoked while the stream was open.").ToRpcException();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _watching;
        _either?.Dispose();
        _revoked.Dispose();
        _end.Dispose();
    }

    private async Task WatchAsync(string keyId, KnownKeys keys, TimeProvider clock)
    {
        using var timer = new PeriodicTimer(BetweenLooks, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(_end.Token))
            {
                if (await IsRevokedAsync(keyId, keys))
                {
                    await _revoked.CancelAsync();
                    return;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The stream has ended.
        }
    }

    private async Task<bool> IsRevokedAsync(string keyId, KnownKeys keys)
    {
        try
        {
            return await keys.FindAsync(keyId, _end.Token) is not { Key.RevokeTime: null };
        }
        catch (NpgsqlException)
        {
            return false; // while the database does not answer nothing is stored either, and the next look comes
        }
    }
}
