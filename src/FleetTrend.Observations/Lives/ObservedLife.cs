using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Observations.Lives;

/// <summary>One part in one location, from when it came under observation to its end or its last good look. Ages in hours on the part.</summary>
/// <remarks>
/// Where <see cref="Exclusion"/> is <see cref="LifeExclusion.AgeUnknown"/> there are no ages: <see cref="Entry"/> and
/// <see cref="LastGood"/> are zero and mean nothing, <see cref="FirstBad"/> and <see cref="AgeNow"/> are null.
/// </remarks>
public sealed record ObservedLife
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Kind of the location; one with a life.</summary>
    public required LocationKind Kind { get; init; }

    /// <summary>Type group at the start of the life's observation.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Base at the start of the life's observation.</summary>
    public required string Base { get; init; }

    /// <summary>How it ended, or that it goes on.</summary>
    public required LifeEnding Ending { get; init; }

    /// <summary>Why it takes no part in a life fit, or null where it does.</summary>
    public LifeExclusion? Exclusion { get; init; }

    /// <summary>Age at which it came under observation: it is left-truncated there; zero where watched from new.</summary>
    public required Hours Entry { get; init; }

    /// <summary>Age at the last good look (at entry where there was none). Failure, if any, is after it.</summary>
    public required Hours LastGood { get; init; }

    /// <summary>Age at the first bad look; failure is in (LastGood, FirstBad]. Null where it did not fail.</summary>
    public Hours? FirstBad { get; init; }

    /// <summary>What failed it; null where it did not fail, or where a removal says that it failed and no finding says how.</summary>
    public Condition? Failure { get; init; }

    /// <summary>Serial number of the part where it has one.</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Part number: that of its installation; where none is told there, of the part before it; null where none was ever told.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Whether its start is recorded: that it went in at <see cref="StartDate"/>, or before the records are complete.</summary>
    public bool HasStart { get; init; }

    /// <summary>The day it came under observation.</summary>
    public required DateOnly StartDate { get; init; }

    /// <summary>For a life that goes on in service: the age of the part now, by the aircraft's latest hours; else null.</summary>
    public Hours? AgeNow { get; init; }

    /// <summary>The records behind its start, last good look and end.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>The life as statistics need it: failed in (LastGood, FirstBad], or good until LastGood; null where it is excluded.</summary>
    public Life? ForFit() =>
        Exclusion is null ? new Life(LastGood.Value, FirstBad?.Value ?? double.PositiveInfinity, Entry.Value) : null;
}
