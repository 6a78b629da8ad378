using FleetTrend.Records;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Exposures;

/// <summary>Hours during which a location was watched: from its start (installation or first look) to its last look.</summary>
public sealed record LocationExposure
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Kind of the location.</summary>
    public required LocationKind Kind { get; init; }

    /// <summary>Type group during these hours.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Base during these hours.</summary>
    public required string Base { get; init; }

    /// <summary>Time in service at the start; exposure is (From, To].</summary>
    public required Hours From { get; init; }

    /// <summary>Time in service at the last look.</summary>
    public required Hours To { get; init; }

    /// <summary>Number of looks that examined the location within.</summary>
    public required int LookCount { get; init; }

    /// <summary>The records at its two ends.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>Hours of exposure; not negative.</summary>
    public Hours Duration => To - From;
}
