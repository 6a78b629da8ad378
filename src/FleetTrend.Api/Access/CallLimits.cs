using System.Globalization;
using System.Threading.RateLimiting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;

namespace FleetTrend.Api.Access;

/// <summary>How much one key may ask of this process: calls per second, and calls at once. A stream is one call.</summary>
internal sealed class CallLimits(AccessSettings settings) : IDisposable
{
    private static readonly TimeSpan RetryWhenBusy = TimeSpan.FromSeconds(1);

    private readonly PartitionedRateLimiter<string> perSecond = PartitionedRateLimiter.Create<string, string>(
        keyId => RateLimitPartition.GetTokenBucketLimiter(keyId, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = settings.CallsPerSecond,
            TokensPerPeriod = settings.CallsPerSecond,
            ReplenishmentPeriod = TimeSpan.FromSeconds(1),
            QueueLimit = 0,
        }),
        StringComparer.Ordinal);

    private readonly PartitionedRateLimiter<string> atOnce = PartitionedRateLimiter.Create<string, string>(
        keyId => RateLimitPartition.GetConcurrencyLimiter(keyId, _ => new ConcurrencyLimiterOptions
        {
            PermitLimit = settings.CallsAtOnce,
            QueueLimit = 0,
        }),
        StringComparer.Ordinal);

    /// <summary>Lets a call of this key in.</summary>
    /// <returns>Held while the call lasts.</returns>
    /// <exception cref="CallRefusedException">The key asks for too much.</exception>
    public IDisposable Admit(string keyId)
    {
        using (var call = perSecond.AttemptAcquire(keyId))
        {
            if (!call.IsAcquired)
            {
                throw Exhausted(
                    Reasons.CallsPerSecond, keyId, settings.CallsPerSecond, "calls per second",
                    call.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : RetryWhenBusy);
            }
        }

        var held = atOnce.AttemptAcquire(keyId);
        if (held.IsAcquired)
            return held;
        held.Dispose();
        throw Exhausted(Reasons.CallsAtOnce, keyId, settings.CallsAtOnce, "calls at once", RetryWhenBusy);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        perSecond.Dispose();
        atOnce.Dispose();
    }

    private static CallRefusedException Exhausted(Reason reason, string keyId, int limit, string of, TimeSpan retryAfter) =>
        new(reason, $"The key has its limit of {limit.ToString("#,0", CultureInfo.InvariantCulture)} {of}.")
        {
            Metadata = new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["key_id"] = keyId,
                ["limit"] = limit.ToString(CultureInfo.InvariantCulture),
            },
            RetryAfter = retryAfter,
        };
}
