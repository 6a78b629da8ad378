using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Quiet;

/// <summary>A location of the layout that is not examined, while the aircraft is looked at elsewhere and others are examined there.</summary>
public sealed record UnexaminedLocation
{
    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Name of its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The last look there, at a base that of the newest on any of its aircraft; null where nobody ever looked.</summary>
    public DateOnly? LastLookDate { get; init; }

    /// <summary>
    /// Hours flown without a look there until the newest inspection: since the last look, or since the first inspection; at a base all its aircraft
    /// together.
    /// </summary>
    public required double Hours { get; init; }

    /// <summary>Inspections in those hours, each of which examined something else.</summary>
    public required int InspectionCount { get; init; }

    /// <summary>Other aircraft of the type group that are examined there, at a base those of the other bases.</summary>
    public required int OthersExamined { get; init; }

    /// <summary>Other aircraft that have flown long enough to tell.</summary>
    public required int OthersCount { get; init; }

    /// <summary>The last look there, and the inspections since.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
