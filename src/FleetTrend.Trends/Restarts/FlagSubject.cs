using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Restarts;

/// <summary>What a flag is about, in parts.</summary>
public sealed record FlagSubject
{
    /// <summary>The aircraft; null for a base.</summary>
    public string? Registration { get; init; }

    /// <summary>The type group, for a base; null for an aircraft.</summary>
    public string? TypeGroup { get; init; }

    /// <summary>The base; null for an aircraft.</summary>
    public string? Base { get; init; }

    /// <summary>Path of the location; null for the whole aircraft, and for a base.</summary>
    public string? Location { get; init; }

    /// <summary>The condition; null where parts of a kind are counted.</summary>
    public Condition? Condition { get; init; }

    /// <summary>The kind of part; null where a condition is counted.</summary>
    public string? Kind { get; init; }
}
