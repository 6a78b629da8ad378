using System.Text.Json.Serialization;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.OpenFindings;

/// <summary>
/// A finding that nothing has closed. An action other than deferred and monitored closes it, and so does a change of the part. Where nothing at all was
/// done about it, a later look that examined the location and found no defect closes it too.
/// </summary>
public sealed record OpenFinding
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its present base.</summary>
    public required string Base { get; init; }

    /// <summary>Its present type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Name of its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>JASC code of the kind; null where it has none, and in trends stored before it was kept.</summary>
    public string? JascCode { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>The day it was first seen.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>Time in service then.</summary>
    public required double FoundHours { get; init; }

    /// <summary>The first look found it, so that it may be older than the records.</summary>
    public bool PresentAtEntry { get; init; }

    /// <summary>Flight hours since it was first seen, by the latest hours known.</summary>
    public required double HoursSinceFound { get; init; }

    /// <summary>The last day on which the location was looked at.</summary>
    public required DateOnly LastLookDate { get; init; }

    /// <summary>Flight hours since then, by the latest hours known.</summary>
    public required double HoursSinceLook { get; init; }

    /// <summary>The newest action, which left it open: deferred or monitored; null where no action is recorded.</summary>
    public ActionKind? LeftBy { get; init; }

    /// <summary>The day of that action.</summary>
    public DateOnly? LeftDate { get; init; }

    /// <summary>The size first measured, mm; null where none was.</summary>
    public double? FirstMillimetres { get; init; }

    /// <summary>The size last measured, mm; the first again where it was measured once.</summary>
    public double? LastMillimetres { get; init; }

    /// <summary>Flight hours between the two measurements; null where it was measured once.</summary>
    public double? GrowthHours { get; init; }

    /// <summary>The finding each time it was seen, what was done, and the last look.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>Whether it is a leak or a missing piece: these come first, with a caution.</summary>
    [JsonIgnore]
    public bool IsFirst => ComesFirst(Condition);

    /// <summary>Whether a condition is a leak or a missing piece.</summary>
    public static bool ComesFirst(Condition condition) => condition is Condition.LeakTrace or Condition.MissingPiece;
}
