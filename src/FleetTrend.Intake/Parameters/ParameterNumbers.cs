namespace FleetTrend.Intake.Parameters;

/// <summary>The numbers among the parameters of the trends: rules of the call, table and form of the page all follow this list.</summary>
public static class ParameterNumbers
{
    // Look intervals: more than a part's life is none.
    private const double LeastHours = 1;
    private const double MostHours = 5_000;

    // No part of these is older.
    private const double MostAgeHours = 100_000;

    // The season is that of the year before.
    private const double MostDaysAhead = 365;

    /// <summary>All of them, in the order in which they are shown.</summary>
    public static IReadOnlyList<ParameterNumber> All { get; } =
    [
        // Below one half an interval leaves out more than it holds; from 0.9995 on it would be printed as 100 %.
        new(
            "confidence", "Confidence of intervals",
            "How sure an interval is: of intervals at 0.95, 95 in 100 hold the true value. Higher makes every interval wider.", 0.5, 0.999, 3),

        // Above one half more calls would be false than true.
        new(
            "false_discovery_rate", "False alarms among bases called",
            "A base is called, because parts fail sooner there than elsewhere, where at most this share of calls this strong or stronger are false "
                + "alarms. Lower calls fewer bases, and later.",
            0.001, 0.5, 3),

        // CALLS.md shows what is found at the shipped rates; beyond these bounds a call comes nearly never, or every month.
        new(
            "flags_per_50_aircraft_years", "False flags allowed",
            "So many flags per 50 aircraft-years chance alone raises, of aircraft and bases that get worse, all kinds of finding together. Lower raises "
                + "fewer, and later.",
            0.1, 20, 2),
        new(
            "watches_per_50_aircraft_years", "False watches allowed",
            "The same for watches, flags among them. A watch comes earlier than a flag, and more often by chance.", 0.1, 100, 2),

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

        // Below one half an order would leave the shelf empty more often than not.
        new(
            "spare_service_level", "Service level of spares",
            "The chance with which spares on the shelf are to cover what is needed. Higher asks for more of them.", 0.5, 0.999, 3),
        new("spare_first_horizon_days", "Spares foreseen, days ahead: first", "Spares are foreseen for so many days.", 1, MostDaysAhead, 0),
        new("spare_second_horizon_days", "Spares foreseen, days ahead: second", "And for so many days.", 1, MostDaysAhead, 0),
        new("spare_third_horizon_days", "Spares foreseen, days ahead: third", "And for so many. Two or three that are equal are one.", 1, MostDaysAhead, 0),

        // Where a failure costs no more than a planned renewal, no age pays.
        new(
            "failure_cost_ratio", "Cost of a failure",
            "What a failure in service costs, all told, where a planned renewal costs one. It decides at which age renewing a part costs least. Higher renews earlier.", 1.1, 1_000, 1),
        new(
            "undetected_failure_chance", "Undetected failures allowed",
            "Of parts that were good at a look, at most this share is to fail before the next. Lower asks for looks more often.", 0.001, 0.5, 3),
    ];

    /// <summary>The hours of a look interval that differs from the general one.</summary>
    public static ParameterNumber LookInterval { get; } =
        new("hours", "Look interval", "Flight hours from one look to the next.", LeastHours, MostHours, 1) { IsHours = true };

    /// <summary>The greatest renewal age that a maker or a regulation allows.</summary>
    public static ParameterNumber MakerRenewal { get; } =
        new("renewal_hours", "Greatest renewal age", "Greatest age at which a part is renewed, flight hours.", LeastHours, MostAgeHours, 1) { IsHours = true };

    /// <summary>The greatest look interval that a maker or a regulation allows.</summary>
    public static ParameterNumber MakerLook { get; } =
        new("look_hours", "Greatest look interval", "Greatest interval between looks, flight hours.", LeastHours, MostHours, 1) { IsHours = true };
}
