using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends.Scores;

/// <summary>How many spares of a kind and part number a base was told it would need.</summary>
public sealed record KeptSpare
{
    /// <summary>Name of the kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The part number; null where none was known.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Whether parts in service were left out of it, so that it said "at least".</summary>
    public required bool IsAtLeast { get; init; }

    /// <summary>By days ahead, ascending.</summary>
    public required IReadOnlyList<KeptHorizon> Horizons { get; init; }

    /// <summary>The forecast of a need.</summary>
    public static KeptSpare Of(SpareNeed need)
    {
        ArgumentNullException.ThrowIfNull(need);
        return new KeptSpare
        {
            Kind = need.Kinds[0],
            PartNumber = need.PartNumber,
            IsAtLeast = need.AgeUnknown + need.TooFewFailures > 0,
            Horizons = [.. need.Horizons.Select(h => KeptHorizon.Of(need, h))],
        };
    }
}
