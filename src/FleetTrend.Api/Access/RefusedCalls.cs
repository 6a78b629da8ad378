using System.Diagnostics.Metrics;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using Google.Rpc;

namespace FleetTrend.Api.Access;

/// <summary>
/// Calls that were not let in: each is counted by its reason. As long as its address has some of its allowance left, it is
/// logged, and answered in detail; after that, a call without a good key is only told to wait, and nobody can sign in. A good key is
/// never held up by this: many callers may share the address of a proxy. A password may be, since people choose it and others guess it.
/// </summary>
internal sealed class RefusedCalls : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "FleetTrend.Access";

    private static readonly TimeSpan Period = TimeSpan.FromMinutes(1);

    private readonly ILogger<RefusedCalls> log;
    private readonly Counter<long> count;
    private readonly PartitionedRateLimiter<IPAddress> allowance;

    public RefusedCalls(AccessSettings settings, IMeterFactory meters, ILogger<RefusedCalls> log)
    {
        this.log = log;
        count = meters.Create(MeterName).CreateCounter<long>(
            "fleettrend.calls.refused", "{call}", "Calls that were not let in, by reason.");
        allowance = PartitionedRateLimiter.Create<IPAddress, IPAddress>(
            // A window, not a bucket that fills again drop by drop: that would log one call, and that it is the last, every second.
            address => RateLimitPartition.GetFixedWindowLimiter(address, _ => new FixedWindowRateLimiterOptions
            {
                PermitLimit = settings.RefusedCallsPerMinute,
                Window = Period,
                QueueLimit = 0,
            }));
    }

    /// <summary>Counts and logs a refusal.</summary>
    /// <returns>What the caller is told: the refusal, or that there were too many.</returns>
    public CallRefusedException Answer(CallRefusedException refusal, string method, HttpContext http)
    {
        var address = AddressOf(http);
        using var allowed = allowance.AttemptAcquire(address);
        var answer = allowed.IsAcquired || refusal.Reason.Code != Code.Unauthenticated ? refusal : TooMany(allowed);
        count.Add(1, new KeyValuePair<string, object?>("reason", answer.Reason.Name));
        if (!allowed.IsAcquired)
            return answer;
        ApiLog.CallRefused(log, method, address, refusal.Reason.Name, refusal.Metadata.GetValueOrDefault("key_id", "none"));
        if (allowance.GetStatistics(address) is { CurrentAvailablePermits: 0 })
            ApiLog.RefusedCallsNotLogged(log, address, Period.TotalSeconds);
        return answer;
    }

    /// <summary>Whether the address of a request has any of its allowance left: without, no password is looked at.</summary>
    public bool IsHeard(HttpContext http) => allowance.GetStatistics(AddressOf(http)) is not { CurrentAvailablePermits: <= 0 };

    /// <inheritdoc/>
    public void Dispose() => allowance.Dispose();

    private static IPAddress AddressOf(HttpContext http) => NetworkOf(http.Connection.RemoteIpAddress ?? IPAddress.None);

    private static CallRefusedException TooMany(RateLimitLease lease) =>
        new(Reasons.RefusedCalls, "Too many calls without a good key came from this address.")
        {
            RetryAfter = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : Period,
        };

    /// <summary>One customer of an IPv6 network has at least a /64, so addresses within it are not told apart.</summary>
    private static IPAddress NetworkOf(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6)
            return address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6 || IPAddress.IsLoopback(address))
            return address;
        var bytes = address.GetAddressBytes();
        Array.Clear(bytes, 8, 8);
        return new IPAddress(bytes);
    }
}
