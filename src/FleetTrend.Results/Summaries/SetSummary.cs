using FleetTrend.Observations;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Results.Summaries;

/// <summary>What the fleet as a whole needs of a type group: kept as JSON with its set of results.</summary>
internal sealed record SetSummary
{
    /// <summary>Tests by analysis.</summary>
    public required IReadOnlyDictionary<string, TestCounts> Tests { get; init; }

    /// <summary>What may be flagged.</summary>
    public required FlagCandidates Candidates { get; init; }

    /// <summary>Marks of the aircraft that are in it now.</summary>
    public required IReadOnlyList<AircraftMark> Marks { get; init; }
}
