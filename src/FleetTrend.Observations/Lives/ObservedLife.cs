using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Lives;

/// <summary>One part in one location, from when it came under observation to its end or its last good look. Ages in hours on the part.</summary>
public sealed record ObservedLife
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Kind of the location; one with a life.</summary>
    public required string Kind { get; init; }

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

    /// <summary>What failed it; null where it did not fail.</summary>
    public Condition? Failure { get; init; }

    /// <summary>Serial number of the part where it has one.</summary>
    public string? SerialNumber { get; init; }

    /// <summary>The day it came under observation.</summary>
    public required DateOnly StartDate { get; init; }

    /// <summary>For a life that goes on in service: the age of the part now, by the aircraft's latest hours; else null.</summary>
    public Hours? AgeNow { get; init; }

    /// <summary>The records behind its start, last good look and end.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
