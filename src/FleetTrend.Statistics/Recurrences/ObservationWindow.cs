using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// A span of a unit's age in which its events are known: (<see cref="Start"/>, <see cref="Stop"/>], open at the start,
/// closed at the stop, hours.
/// </summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ObservationWindow
{
    /// <summary>Makes a window.</summary>
    /// <param name="start">Age at which observation began, hours, zero or more; events at this very age are not counted.</param>
    /// <param name="stop">Age at which it ended, hours, not below the start; events at this age are counted.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is negative or not finite, or the stop is below the start.</exception>
    public ObservationWindow(double start, double stop)
    {
        if (!double.IsFinite(start) || start < 0)
            throw new ArgumentOutOfRangeException(nameof(start), start, "A window starts at a finite age, zero or more.");
        if (!double.IsFinite(stop) || stop < start)
            throw new ArgumentOutOfRangeException(nameof(stop), stop, $"A window stops at a finite age, not before its start {start}.");
        Start = start;
        Stop = stop;
    }

    /// <summary>Age at which observation began, hours, not included.</summary>
    public double Start { get; }

    /// <summary>Age at which observation ended, hours, included.</summary>
    public double Stop { get; }

    /// <summary>Hours observed.</summary>
    public double Length => Stop - Start;

    /// <summary>Whether an event at this age would have been seen.</summary>
    public bool Contains(double time) => time > Start && time <= Stop;
}
