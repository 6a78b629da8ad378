using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Rates;

/// <summary>How often a condition arises per 1,000 hours at a location, at all locations of a kind, or in a whole type group.</summary>
public sealed record RateTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The kind; null for the type group as a whole.</summary>
    public string? Kind { get; init; }

    /// <summary>The kind's title, for people; null for the type group as a whole, and in trends stored before it was kept.</summary>
    public string? KindTitle { get; init; }

    /// <summary>Path of the location; null for a kind or the type group as a whole.</summary>
    public string? Location { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>All events over all location hours.</summary>
    public required Figure Rate { get; init; }

    /// <summary>Aircraft with exposure there.</summary>
    public required int AircraftCount { get; init; }

    /// <summary>Events in no rate because the first look found them, with no start of watching behind it.</summary>
    public required int PresentAtEntryCount { get; init; }

    /// <summary>
    /// Events in no rate because they were found in no watched hours; zero in trends of an earlier version, which had them
    /// among <see cref="PresentAtEntryCount"/>.
    /// </summary>
    public int NotWatchedCount { get; init; }

    /// <summary>Events within that came back after an action that had closed one.</summary>
    public required int RepeatCount { get; init; }

    /// <summary>
    /// Aircraft with events in the rate of a location, the most first; empty for a kind or a type group, and in trends of an earlier version.
    /// </summary>
    public IReadOnlyList<AircraftEvents> Aircraft { get; init; } = [];
}
