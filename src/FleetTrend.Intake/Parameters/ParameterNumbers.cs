namespace FleetTrend.Intake.Parameters;

/// <summary>The numbers among the parameters of the trends: rules of the call, table and form of the page all follow this list.</summary>
public static class ParameterNumbers
{
    // Look intervals: more than a part's life is none.
    private const double LeastHours = 1;
    private const double MostHours = 5_000;

    /// <summary>All of them, in the order in which they are shown.</summary>
    public static IReadOnlyList<ParameterNumber> All { get; } =
    [
        // Below one half an interval leaves out more than it holds; from 0.9995 on it would be printed as 100 %.
        new(
            "confidence", "Confidence of intervals",
            "How sure an interval is: of intervals at 0.95, 95 in 100 hold the true value. Higher makes every interval wider.", 0.5, 0.999, 3),

        // Above one half more calls would be false than true.
        new(
            "false_discovery_rate", "False alarms among flags",
            "A flag is raised where, of calls this strong or stronger, at most this share are false alarms. Lower raises fewer flags, and later.",
            0.001, 0.5, 3),

        // One event is no drift, whatever its chance.
        new(
            "minimum_events_for_drift", "Events before drift is called",
            "An aircraft is flagged for drift only with at least this many events of one condition.", 2, 100, 0),
        new(
            "repeats_for_flag", "Returns before a location is called",
            "A location is flagged as coming back only with at least this many events after one that had been closed.", 1, 100, 0),

        // COVERAGE.md shows what intervals of a fit hold from three failures on.
        new(
            "minimum_failures_for_fit", "Failures before a life is fitted",
            "Part life is fitted, and medians are compared between bases, only with at least this many failures.", 3, 100, 0),
        new(
            "look_interval_hours", "Look interval",
            "Flight hours from one look at a part to the next. A part that fails within its first so many hours fails early.", LeastHours, MostHours, 1)
        {
            IsHours = true,
        },
    ];

    /// <summary>The hours of a look interval that differs from the general one.</summary>
    public static ParameterNumber LookInterval { get; } =
        new("hours", "Look interval", "Flight hours from one look to the next.", LeastHours, MostHours, 1) { IsHours = true };
}
