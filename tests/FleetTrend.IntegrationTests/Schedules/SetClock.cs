namespace FleetTrend.IntegrationTests.Schedules;

/// <summary>A clock that a test sets.</summary>
internal sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
