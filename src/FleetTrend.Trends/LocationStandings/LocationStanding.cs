using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Trends.Chances;

namespace FleetTrend.Trends.LocationStandings;

/// <summary>
/// One condition at one location of one aircraft against the same location on the other aircraft of the type group: observed
/// against expected, over all hours watched there. Kept for places where the condition was seen more than once.
/// </summary>
public sealed record LocationStanding
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>The type group whose other aircraft are the norm.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Events of the rate: those found in watched hours; what was present at entry is none.</summary>
    public required int Observed { get; init; }

    /// <summary>Events there besides: the first look found them, so they are in no rate.</summary>
    public int PresentAtEntry { get; init; }

    /// <summary>Events there besides: found in no watched hours, so in no rate.</summary>
    public int NotWatched { get; init; }

    /// <summary>Those of the observed that came at a later look than one that had been closed.</summary>
    public required int Returns { get; init; }

    /// <summary>Hours watched there.</summary>
    public required double ExposureHours { get; init; }

    /// <summary>Events expected in those hours at the rate of the others there; its counts are those of the others.</summary>
    public required Figure Expected { get; init; }

    /// <summary>Other aircraft watched there.</summary>
    public required int OthersCount { get; init; }

    /// <summary>Observed over expected, with its interval.</summary>
    public required Figure Ratio { get; init; }

    /// <summary>Exact one-sided chance of at least this many, were the place like the same place on the others.</summary>
    public required PValue PValue { get; init; }

    /// <summary>The same after allowing for all places tested together (Benjamini and Hochberg 1995).</summary>
    public required double QValue { get; init; }

    /// <summary>
    /// How many were tested together: every aircraft at every location for every condition that its type group has had there,
    /// those without an event among them, over all type groups.
    /// </summary>
    public required int Comparisons { get; init; }

    /// <summary>Day of the first of the events; null where none.</summary>
    public DateOnly? SinceDate { get; init; }

    /// <summary>The records behind the events.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
