using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Recurrences;

/// <summary>Mean cumulative number of events at one location of a type group, by time in service (Nelson 1995).</summary>
public sealed record RecurrenceTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Aircraft watched there.</summary>
    public required int AircraftCount { get; init; }

    /// <summary>Events.</summary>
    public required int Events { get; init; }

    /// <summary>The function, a point per distinct event time.</summary>
    public required IReadOnlyList<MeanCumulativePoint> Points { get; init; }

    /// <summary>
    /// Hours in which at least one aircraft was watched, ascending and apart: the function says nothing outside. Null in trends of an
    /// earlier version.
    /// </summary>
    public IReadOnlyList<WatchedSpan>? Watched { get; init; }

    /// <summary>Name of the method and its source.</summary>
    public required string Method { get; init; }
}
