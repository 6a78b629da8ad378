namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Events per hour of exposure with the exact interval. With no events the rate is zero and the interval's upper end
/// is what the hours can still exclude: a zero is not evidence of soundness.
/// </summary>
public sealed record RateEstimate
{
    private RateEstimate(int events, double exposureHours, Interval interval)
    {
        Events = events;
        ExposureHours = exposureHours;
        Interval = interval;
    }

    /// <summary>Events counted.</summary>
    public int Events { get; }

    /// <summary>Hours under observation, above zero.</summary>
    public double ExposureHours { get; }

    /// <summary>Events per hour.</summary>
    public double Rate => Events / ExposureHours;

    /// <summary>Exact interval of the rate, events per hour.</summary>
    public Interval Interval { get; }

    /// <summary>Rate and exact interval of a Poisson count over known exposure.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="exposureHours">Hours under observation, finite, zero or more.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The rate, or <see cref="NotEstimableKind.NothingObserved"/> where there was no exposure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or infinite input, or confidence outside (0, 1).</exception>
    /// <exception cref="ArgumentException">Events were counted in no exposure.</exception>
    /// <remarks>Source: Garwood 1936; NIST/SEMATECH e-Handbook 8.4.5.1.</remarks>
    public static Outcome<RateEstimate> Estimate(int events, double exposureHours, double confidence = 0.95)
    {
        CheckExposure(events, exposureHours);
        Confidences.Check(confidence);
        if (exposureHours == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No hours of exposure: nothing was observed.");
        var mean = GarwoodInterval.Estimate(events, confidence);
        return new RateEstimate(
            events, exposureHours, new Interval(mean.Lower / exposureHours, mean.Upper / exposureHours, confidence));
    }

    /// <summary>Refuses a count or an exposure that cannot be.</summary>
    internal static void CheckExposure(int events, double exposureHours)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        if (!double.IsFinite(exposureHours) || exposureHours < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(exposureHours), exposureHours, "Exposure is a finite number of hours, zero or more.");
        }
        if (exposureHours == 0 && events > 0)
            throw new ArgumentException($"{events} events in no exposure.", nameof(events));
    }
}
