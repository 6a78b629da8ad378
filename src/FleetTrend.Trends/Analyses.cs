using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.DataProblems;
using FleetTrend.Trends.Locations;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends;

/// <summary>The list of analyses: who adds one edits this list.</summary>
public static class Analyses
{
    /// <summary>The fleet table.</summary>
    public static FleetLines Fleet { get; } = new();

    /// <summary>Rates per location, kind and type group.</summary>
    public static RateTrends Rates { get; } = new();

    /// <summary>Mean cumulative functions.</summary>
    public static RecurrenceTrends Recurrences { get; } = new();

    /// <summary>Places where a condition came back.</summary>
    public static RepeatLocations Repeats { get; } = new();

    /// <summary>One such place per base beside the others.</summary>
    public static RecurrenceContrasts RecurrenceContrasts { get; } = new();

    /// <summary>Places against the same place on the others.</summary>
    public static LocationStandings LocationStandings { get; } = new();

    /// <summary>Lives of parts.</summary>
    public static PartLifeTrends PartLives { get; } = new();

    /// <summary>Aircraft against their like.</summary>
    public static AirframeStandings Airframes { get; } = new();

    /// <summary>What in the records does not add up.</summary>
    public static ProblemsOfAircraft Problems { get; } = new();

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Analysis> All { get; } =
        [Fleet, Rates, Recurrences, Repeats, RecurrenceContrasts, LocationStandings, PartLives, Airframes, Problems];
}
