using System.Text.Json.Serialization;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Quiet;

/// <summary>Whether an aircraft, or a base as a whole, is too quiet: far fewer findings than the others would have, or locations never examined.</summary>
public sealed record Quietness
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The aircraft; null where the base as a whole is the subject.</summary>
    public string? Registration { get; init; }

    /// <summary>The base, of the aircraft its present one.</summary>
    public required string Base { get; init; }

    /// <summary>Whether it is asked about for its few findings.</summary>
    public required QuietVerdict Verdict { get; init; }

    /// <summary>Natural logarithm of the odds by which "few of its findings are written down" fits better than "as the others"; null without looks.</summary>
    public double? LogOdds { get; init; }

    /// <summary>The day since when it is quiet, most probably; of one that is not asked about, the first day of its records.</summary>
    public DateOnly? SinceDate { get; init; }

    /// <summary>Hours from that day to the newest inspection; null for a base.</summary>
    public double? Hours { get; init; }

    /// <summary>Findings since that day, of all classes of condition.</summary>
    public required int Found { get; init; }

    /// <summary>Findings that the others' rates or lives give for the same looks.</summary>
    public required double Expected { get; init; }

    /// <summary>Found over expected, with its interval.</summary>
    public required Figure Ratio { get; init; }

    /// <summary>The same by class of condition, over all the time.</summary>
    public required IReadOnlyList<QuietClass> Classes { get; init; }

    /// <summary>Locations that are not examined, the longest first.</summary>
    public required IReadOnlyList<UnexaminedLocation> Unexamined { get; init; }

    /// <summary>What is asked, in a mechanic's words, one question each; empty where nothing is.</summary>
    public required IReadOnlyList<string> Questions { get; init; }

    /// <summary>The records of the findings since that day, and of the looks at the ends of the hours; of a location that is not examined, its own.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>Whether anything is asked.</summary>
    [JsonIgnore]
    public bool IsAsked => Questions.Count > 0;
}
