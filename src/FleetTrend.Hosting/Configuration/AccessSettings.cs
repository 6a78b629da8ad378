namespace FleetTrend.Hosting.Configuration;

/// <summary>How much callers of the API may ask of one process.</summary>
public sealed record AccessSettings
{
    /// <summary>Calls per second with one key, 1 to 1,000,000.</summary>
    public int CallsPerSecond { get; init; } = 1_000;

    /// <summary>Calls, streams included, that one key may have open at once, 1 to 10,000.</summary>
    public int CallsAtOnce { get; init; } = 100;

    /// <summary>Refused calls of one address that are logged and answered in detail, per minute, 1 to 1,000,000.</summary>
    public int RefusedCallsPerMinute { get; init; } = 60;
}
