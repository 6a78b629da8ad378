using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Flags;

/// <summary>A flag that the numbers of a refresh ask for; the store decides whether it is new.</summary>
public sealed record FlagProposal
{
    /// <summary>What it is about, the same from week to week.</summary>
    public required string Subject { get; init; }

    /// <summary>Name of the kind of flag.</summary>
    public required string Kind { get; init; }

    /// <summary>How strong it is.</summary>
    public FlagTier Tier { get; init; } = FlagTier.Flag;

    /// <summary>The aircraft; null for a base.</summary>
    public string? Registration { get; init; }

    /// <summary>The base.</summary>
    public required string Base { get; init; }

    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Events, or failures, behind it.</summary>
    public required int EventCount { get; init; }

    /// <summary>The whole proposal as JSON text; it comes back to the byte.</summary>
    public required string BodyJson { get; init; }
}
