using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Norms;

/// <summary>Events of one unit and what they are counted against: hours, or the events expected at the norm.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CountExposure
{
    /// <summary>Makes a pair.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="exposure">Hours or expected events, finite, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or infinite input.</exception>
    /// <exception cref="ArgumentException">Events were counted in no exposure.</exception>
    public CountExposure(int events, double exposure)
    {
        Rates.RateEstimate.CheckExposure(events, exposure);
        Events = events;
        Exposure = exposure;
    }

    /// <summary>Events counted.</summary>
    public int Events { get; }

    /// <summary>Hours or expected events.</summary>
    public double Exposure { get; }
}
