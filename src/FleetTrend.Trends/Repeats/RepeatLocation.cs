using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Repeats;

/// <summary>
/// One location of one aircraft where a condition came back after an action that had closed it, since the last renewal. A fact and
/// no judgement, beside what the others had there.
/// </summary>
public sealed record RepeatLocation
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Its type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>The events since the last renewal, oldest first; at least two.</summary>
    public required IReadOnlyList<RepeatEvent> Events { get; init; }

    /// <summary>Time in service at the last renewal that ended a run of events there; null where none did.</summary>
    public double? RenewedHours { get; init; }

    /// <summary>Hours watched there since the last renewal or start.</summary>
    public required double ExposureHours { get; init; }

    /// <summary>The same location on the others of the type group; null where none was watched there, and in trends of an earlier version.</summary>
    public RepeatOthers? Others { get; init; }

    /// <summary>The records behind it.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
