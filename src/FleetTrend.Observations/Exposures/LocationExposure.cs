using System.Text.Json.Serialization;
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

    /// <summary>Time in service at each look that examined the location within, ascending.</summary>
    public required IReadOnlyList<Hours> LookHours { get; init; }

    /// <summary>Number of those looks.</summary>
    [JsonIgnore]
    public int LookCount => LookHours.Count;

    /// <summary>The records at its two ends.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>Hours of exposure; not negative.</summary>
    public Hours Duration => To - From;
}
