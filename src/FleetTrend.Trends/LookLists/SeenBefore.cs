using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.LookLists;

/// <summary>What was found at a location before, and what was done about it.</summary>
public sealed record SeenBefore
{
    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>The day it was first seen.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>Time in service then.</summary>
    public required double FoundHours { get; init; }

    /// <summary>Flight hours since then, by the latest hours known.</summary>
    public required double HoursSinceFound { get; init; }

    /// <summary>The size last measured, mm; null where none was.</summary>
    public double? Millimetres { get; init; }

    /// <summary>The newest action on it; null where none is recorded.</summary>
    public ActionKind? Action { get; init; }

    /// <summary>The day of that action.</summary>
    public DateOnly? ActionDate { get; init; }

    /// <summary>Time in service at that action.</summary>
    public double? ActionHours { get; init; }

    /// <summary>Whether it is still open.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>The findings and actions behind it.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
