namespace FleetTrend.Statistics.Norms;

/// <summary>What one unit (an aircraft) had in one stratum: events and hours.</summary>
public sealed record UnitCount
{
    /// <summary>Makes a count.</summary>
    /// <param name="unit">The unit's key.</param>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="exposureHours">Hours under observation, finite, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or infinite input.</exception>
    /// <exception cref="ArgumentException">Events were counted in no exposure.</exception>
    public UnitCount(string unit, int events, double exposureHours)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Rates.RateEstimate.CheckExposure(events, exposureHours);
        Unit = unit;
        Events = events;
        ExposureHours = exposureHours;
    }

    /// <summary>The unit's key.</summary>
    public string Unit { get; }

    /// <summary>Events counted.</summary>
    public int Events { get; }

    /// <summary>Hours under observation.</summary>
    public double ExposureHours { get; }
}
