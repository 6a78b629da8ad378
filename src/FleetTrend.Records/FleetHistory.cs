using FleetTrend.Records.Flags;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

namespace FleetTrend.Records;

/// <summary>All that is known of a fleet at a moment, and all that its numbers are made from: never one aircraft of it alone, since parts
/// carry their hours from aircraft to aircraft.</summary>
public sealed record FleetHistory
{
    /// <summary>The moment of knowledge (UTC): only what was accepted or decided by then is here.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Records by aircraft, ordered by registration.</summary>
    public required IReadOnlyList<AircraftHistory> Aircraft { get; init; }

    /// <summary>Layouts by type group name; a type group that is missing has no locations.</summary>
    public required IReadOnlyDictionary<string, Layout> Layouts { get; init; }

    /// <summary>Retractions whose record never came; no aircraft is known of them.</summary>
    public IReadOnlyList<Recorded<Retraction>> RetractionsAlone { get; init; } = [];

    /// <summary>Practice changes of all bases and type groups, ordered by day, then by key.</summary>
    public IReadOnlyList<Recorded<PracticeChange>> PracticeChanges { get; init; } = [];

    /// <summary>Stock counts of all bases, ordered by day, then by key.</summary>
    public IReadOnlyList<Recorded<StockCount>> StockCounts { get; init; } = [];

    /// <summary>The newest closing of each flag, as decided by that moment.</summary>
    public IReadOnlyList<FlagClosing> FlagClosings { get; init; } = [];
}
