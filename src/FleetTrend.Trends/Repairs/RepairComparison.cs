using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Repairs;

/// <summary>Two actions against the same condition at the same kind of location; the one that holds longer by the estimate is first.</summary>
public sealed record RepairComparison
{
    /// <summary>The action that holds longer.</summary>
    public required ActionKind Longer { get; init; }

    /// <summary>The other.</summary>
    public required ActionKind Shorter { get; init; }

    /// <summary>How many times as long the first holds; null where too few came back for it.</summary>
    public Figure? TimesAsLong { get; init; }

    /// <summary>What is compared where too few came back for <see cref="TimesAsLong"/>: those known to have come back by 200 h; null where that is told.</summary>
    public RepairCounts? Counts { get; init; }

    /// <summary>Two-sided chance of a difference at least this large, did both hold alike; null where not tested.</summary>
    public double? PValue { get; init; }

    /// <summary>The same after allowing for every comparison of repairs of the fleet (Holm 1979); null where not tested.</summary>
    public double? AdjustedPValue { get; init; }

    /// <summary>What follows.</summary>
    public RepairFinding Finding { get; init; }
}
