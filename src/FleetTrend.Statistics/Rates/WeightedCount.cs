using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Rates;

/// <summary>A Poisson count and what each of its events weighs in a sum.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct WeightedCount
{
    /// <summary>Makes a count with a weight.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="weight">Weight of an event, finite and above zero: own hours over the hours in which the events were counted, for example.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or a weight that is not finite and above zero.</exception>
    public WeightedCount(long events, double weight)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        if (!(weight > 0) || double.IsInfinity(weight))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight is finite and above zero.");
        Events = events;
        Weight = weight;
    }

    /// <summary>Events counted.</summary>
    public long Events { get; }

    /// <summary>Weight of an event.</summary>
    public double Weight { get; }
}
