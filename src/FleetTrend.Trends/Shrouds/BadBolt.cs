using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Shrouds;

/// <summary>A clamp bolt with something open at it.</summary>
public sealed record BadBolt
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>State of its hex.</summary>
    public required HexState State { get; init; }

    /// <summary>The day it was found.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>Flight hours since then.</summary>
    public required double HoursSince { get; init; }

    /// <summary>Flight hours in service; null where not known.</summary>
    public double? AgeHours { get; init; }

    /// <summary>The records of the finding.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
