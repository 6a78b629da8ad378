using FleetTrend.Intake;
using Grpc.Core;
using Npgsql;

namespace FleetTrend.Api.Access;

/// <summary>The requests of a stream, for as long as its key is good: seconds after a revocation, reading ends with
/// UNAUTHENTICATED, and what was read before is still acknowledged.</summary>
internal sealed class WatchedReader<T> : IAsyncStreamReader<T>, IAsyncDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    private readonly IAsyncStreamReader<T> requests;
    private readonly CancellationTokenSource revoked = new();
    private readonly CancellationTokenSource end = new();
    private readonly Task watching;
    private CancellationTokenSource? either;
    private CancellationToken eitherOf;

    public WatchedReader(IAsyncStreamReader<T> requests, string keyId, KnownKeys keys, TimeProvider clock)
    {
        this.requests = requests;
        watching = WatchAsync(keyId, keys, clock);
    }

    /// <inheritdoc/>
    public T Current => requests.Current;

    /// <inheritdoc/>
    public async Task<bool> MoveNext(CancellationToken cancellationToken)
    {
        // A reader passes the same token each time; one source of both per stream, not per message.
        if (either is null || eitherOf != cancellationToken)
        {
            either?.Dispose();
            either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, revoked.Token);
            eitherOf = cancellationToken;
        }

        try
        {
            return await requests.MoveNext(either.Token);
        }
        catch (OperationCanceledException) when (revoked.IsCancellationRequested)
        {
            throw new CallRefusedException(Reasons.KeyRevoked, "The key was revoked while the stream was open.").ToRpcException();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await end.CancelAsync();
        await watching;
        either?.Dispose();
        revoked.Dispose();
        end.Dispose();
    }

    private async Task WatchAsync(string keyId, KnownKeys keys, TimeProvider clock)
    {
        using var timer = new PeriodicTimer(BetweenLooks, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(end.Token))
            {
                if (await IsRevokedAsync(keyId, keys))
                {
                    await revoked.CancelAsync();
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
            return await keys.FindAsync(keyId, end.Token) is not { Key.RevokeTime: null };
        }
        catch (NpgsqlException)
        {
            return false; // while the database does not answer nothing is stored either, and the next look comes
        }
    }
}
