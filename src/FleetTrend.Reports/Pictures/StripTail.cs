namespace FleetTrend.Reports.Pictures;

/// <summary>An aircraft in the strip of the fleet.</summary>
/// <param name="Registration">Its mark.</param>
/// <param name="OpenLeaks">Leaks that nothing has closed.</param>
/// <param name="HoursSinceLook">Hours flown since the latest inspection; null where there was none.</param>
/// <param name="LookIntervalHours">The look interval of its type group.</param>
/// <param name="OpenCalls">Flags and watches of it that nobody has closed.</param>
public sealed record StripTail(string Registration, int OpenLeaks, double? HoursSinceLook, double LookIntervalHours, int OpenCalls)
{
    /// <summary>Whether it was flown for longer than a look interval since it was looked at, or never was.</summary>
    public bool IsPast => HoursSinceLook is not { } hours || hours > LookIntervalHours;

    /// <summary>Whether there is anything to say of it.</summary>
    public bool IsNotable => OpenLeaks > 0 || OpenCalls > 0 || IsPast;
}
