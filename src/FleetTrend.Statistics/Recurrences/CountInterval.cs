using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>Events of one unit known only as a number found between two looks, in the ages (start, stop].</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CountInterval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="start">Age at the earlier look, hours, zero or more.</param>
    /// <param name="stop">Age at the later look, hours, above the start.</param>
    /// <param name="events">Events found new at the later look, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An age is negative, not finite or out of order, or the count is negative.</exception>
    public CountInterval(double start, double stop, int events)
    {
        var window = new ObservationWindow(start, stop);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(stop, start);
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Start = window.Start;
        Stop = window.Stop;
        Events = events;
    }

    /// <summary>Age at the earlier look, hours, not included.</summary>
    public double Start { get; }

    /// <summary>Age at the later look, hours, included.</summary>
    public double Stop { get; }

    /// <summary>Events found new at the later look.</summary>
    public int Events { get; }
}
