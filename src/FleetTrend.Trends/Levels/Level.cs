using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Levels;

/// <summary>How high or low an aircraft, a base or a location of a type group runs, year in, year out, in one class of condition. No news in itself.</summary>
public sealed record Level
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The aircraft; null where a base as a whole, or a location of all aircraft, is the subject.</summary>
    public string? Registration { get; init; }

    /// <summary>The base, of the aircraft its present one; null for a location.</summary>
    public string? Base { get; init; }

    /// <summary>Path of the location, on all aircraft together, beside the others of its kind; null for an aircraft or a base.</summary>
    public string? Location { get; init; }

    /// <summary>The condition; null where failures of a kind of part are counted.</summary>
    public Condition? Condition { get; init; }

    /// <summary>The kind of part; null where a condition is counted.</summary>
    public string? Kind { get; init; }

    /// <summary>Findings.</summary>
    public required int Found { get; init; }

    /// <summary>Findings that the rates or lives of the others, of a location those of the others of its kind, give for the same looks.</summary>
    public required double Expected { get; init; }

    /// <summary>Times the norm, shrunk towards the others by how much they differ, with its interval.</summary>
    public required Figure Ratio { get; init; }

    /// <summary>Chance that it runs above one and a half times the norm.</summary>
    public required double ChanceAboveOneAndAHalf { get; init; }

    /// <summary>Coefficient of variation between aircraft (or bases, or locations of a kind), estimated.</summary>
    public required double Variation { get; init; }
}
