using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>A span of one unit in which events are known to lie, such as that between two looks.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GrowthSpan
{
    /// <summary>Makes a span.</summary>
    /// <param name="start">Its start, by the clock of the trend: an age, or a time that may be negative.</param>
    /// <param name="stop">Its end, above the start.</param>
    /// <param name="exposure">Exposure in it, such as hours watched at all locations, even over the span; above zero.</param>
    /// <param name="events">Events that came in it, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, out of order, or below its least.</exception>
    public GrowthSpan(double start, double stop, double exposure, int events)
    {
        if (!double.IsFinite(start)) throw new ArgumentOutOfRangeException(nameof(start), start, "A start is finite.");
        if (!(stop > start && double.IsFinite(stop))) throw new ArgumentOutOfRangeException(nameof(stop), stop, "An end is finite and after the start.");
        if (!(exposure > 0 && double.IsFinite(exposure))) throw new ArgumentOutOfRangeException(nameof(exposure), exposure, "Exposure is finite and above zero.");
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        (Start, Stop, Exposure, Events) = (start, stop, exposure, events);
    }

    /// <summary>Start, not included.</summary>
    public double Start { get; }

    /// <summary>End, included.</summary>
    public double Stop { get; }

    /// <summary>Exposure.</summary>
    public double Exposure { get; }

    /// <summary>Events.</summary>
    public int Events { get; }
}
