using System.Text.Json.Serialization;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Statistics.Effects;

namespace FleetTrend.Trends.Effects;

/// <summary>Whether an action on a flag, or a practice change, helped, in one class of condition.</summary>
public sealed record Effect
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Subject of the flag that was acted on; null for a practice change.</summary>
    public string? FlagSubject { get; init; }

    /// <summary>Key of the practice change; null for a flag.</summary>
    public RecordKey? Practice { get; init; }

    /// <summary>What was done in another way, as its source wrote it; null for a flag.</summary>
    public string? What { get; init; }

    /// <summary>The aircraft; null where a base or all bases are the subject.</summary>
    public string? Registration { get; init; }

    /// <summary>The base; null where an aircraft or all bases are the subject.</summary>
    public string? Base { get; init; }

    /// <summary>Path of the location that was flagged; null where it is about more than one.</summary>
    public string? Location { get; init; }

    /// <summary>The condition; null where failures of a kind of part are counted.</summary>
    public Condition? Condition { get; init; }

    /// <summary>The kind of part; null where a condition is counted.</summary>
    public string? Kind { get; init; }

    /// <summary>The day of the action, or the first day of the new practice.</summary>
    public required DateOnly ActionDate { get; init; }

    /// <summary>The verdict by what is known now; a flag keeps the first that is not "too early".</summary>
    public required EffectVerdict Verdict { get; init; }

    /// <summary>Whether nothing can be said yet.</summary>
    [JsonIgnore]
    public bool IsTooEarly => Verdict == EffectVerdict.TooEarly;

    /// <summary>Natural logarithm of the odds by which "it helped" fits better than "as before".</summary>
    public required double LogOdds { get; init; }

    /// <summary>First day of what is counted as before: since the trouble began, by the most probable beginning, or the last 80 weeks.</summary>
    public required DateOnly BeforeSinceDate { get; init; }

    /// <summary>Findings before.</summary>
    public required int FoundBefore { get; init; }

    /// <summary>Findings that the others' rates give for the same looks.</summary>
    public required double ExpectedBefore { get; init; }

    /// <summary>Findings after.</summary>
    public required int FoundAfter { get; init; }

    /// <summary>Findings that the others' rates of that time give for the same looks.</summary>
    public required double ExpectedAfter { get; init; }

    /// <summary>Findings of the others after.</summary>
    public required int OthersFoundAfter { get; init; }

    /// <summary>Found over expected after, over the same before, with its 90 % interval. Of an aircraft that was flagged it leans to the good side.</summary>
    public required Figure AfterOverBefore { get; init; }

    /// <summary>Found over expected after, with its 90 % interval.</summary>
    public required Figure AfterOverNorm { get; init; }

    /// <summary>What came of it, in a mechanic's words.</summary>
    public required string Statement { get; init; }
}
