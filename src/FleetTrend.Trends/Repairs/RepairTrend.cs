using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Repairs;

/// <summary>Whether what was done against a condition at one kind of location held, by what was done, on a type group.</summary>
public sealed record RepairTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Name of the kind of location.</summary>
    public required string Kind { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>What was done, most often first.</summary>
    public required IReadOnlyList<RepairedAction> Actions { get; init; }

    /// <summary>Each two of these actions compared, the one that holds longer first; empty where only one was followed.</summary>
    public required IReadOnlyList<RepairComparison> Comparisons { get; init; }
}
