using FleetTrend.Trends;

namespace FleetTrend.Reports.Tests;

/// <summary>Synthetic: figures with made-up numbers.</summary>
internal static class InventedFigures
{
    public static Figure Ratio(double value, double lower, double upper, int events, double hours) => new()
    {
        Value = value,
        Lower = lower,
        Upper = upper,
        Confidence = 0.95,
        Unit = "",
        Events = events,
        ExposureHours = hours,
        Method = "observed over expected, leave one out",
    };

    public static Figure OfLives(double value, double lower, double upper, string unit, int failures, int lives) => new()
    {
        Value = value,
        Lower = lower,
        Upper = upper,
        Confidence = 0.95,
        Unit = unit,
        Events = failures,
        Lives = lives,
        Method = "Weibull maximum likelihood, profile limits",
    };

    public static Figure Rate(int events, double hours, double? value, double? lower, double upper) => new()
    {
        Value = value,
        Lower = lower,
        Upper = upper,
        Confidence = 0.95,
        Unit = "per 1,000 location-hours",
        Events = events,
        ExposureHours = hours,
        Method = "exact Poisson (Garwood 1936)",
        NotEnoughData = value is null ? "no event" : null,
    };

    public static Figure Expected(double value, double lower, double upper, int events, double hours) => new()
    {
        Value = value,
        Lower = lower,
        Upper = upper,
        Confidence = 0.95,
        Unit = "events",
        Events = events,
        ExposureHours = hours,
        Method = "the others' rate times own hours",
    };
}
