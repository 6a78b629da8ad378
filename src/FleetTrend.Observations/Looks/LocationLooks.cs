using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Looks;

/// <summary>How often a location of an aircraft's present layout was looked at, and when last; a row for each, also where nobody ever looked.</summary>
public sealed record LocationLooks
{
    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Kind of the location.</summary>
    public required LocationKind Kind { get; init; }

    /// <summary>Days on which it was looked at: an inspection examined it, or a finding tells of it.</summary>
    public required int LookCount { get; init; }

    /// <summary>The last of them; null where there is none.</summary>
    public DateOnly? LastDate { get; init; }

    /// <summary>The records of the last look.</summary>
    public IReadOnlyList<RecordKey> Evidence { get; init; } = [];

    /// <summary>What inspections since the last look say of it, or all where there is none; null where no line says that it was not examined.</summary>
    public PassedOver? PassedOver { get; init; }
}
