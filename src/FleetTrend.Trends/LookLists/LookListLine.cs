using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.LookLists;

/// <summary>A location to look at.</summary>
public sealed record LookListLine
{
    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Name of its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>What to look for there; empty where neither the layout nor the kind says it.</summary>
    public required string LookFor { get; init; }

    /// <summary>Why it stands out, the weightiest reason first; empty where nothing does.</summary>
    public required IReadOnlyList<LookReason> Reasons { get; init; }

    /// <summary>What the calls that name it are about, in words, such as <c>cracks</c>; null where none does.</summary>
    public string? CalledFor { get; init; }

    /// <summary>What to check besides, where a condition is open or has come back.</summary>
    public required IReadOnlyList<string> Checks { get; init; }

    /// <summary>The look interval of its kind, flight hours.</summary>
    public required double IntervalHours { get; init; }

    /// <summary>Time in service at each look that counts hours there, ascending.</summary>
    public IReadOnlyList<double> LookHours { get; init; } = [];

    /// <summary>The last day on which it was looked at; null where nobody has.</summary>
    public DateOnly? LastLookDate { get; init; }

    /// <summary>Flight hours since then, by the latest hours known; null where nobody has looked, or no hours are known.</summary>
    public double? HoursSinceLook { get; init; }

    /// <summary>The newest inspection since then that says it was not examined; null where none does.</summary>
    public DateOnly? PassedOverDate { get; init; }

    /// <summary>What was found there before, the newest first.</summary>
    public required IReadOnlyList<SeenBefore> Before { get; init; }

    /// <summary>The part in service there; null where it is a place and not a part with a life, or no part is known.</summary>
    public PartOnList? Part { get; init; }

    /// <summary>The records of the last look and of the part.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
