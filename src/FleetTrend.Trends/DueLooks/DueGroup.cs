using System.Text.Json.Serialization;

namespace FleetTrend.Trends.DueLooks;

/// <summary>Locations of an aircraft with one look interval and one last look.</summary>
public sealed record DueGroup
{
    /// <summary>The look interval, flight hours.</summary>
    public required double IntervalHours { get; init; }

    /// <summary>The last look; null where nobody ever looked.</summary>
    public DateOnly? LastLookDate { get; init; }

    /// <summary>Flight hours since then, or since the records begin; null where no hours are known.</summary>
    public double? HoursSince { get; init; }

    /// <summary>Why there was no look since.</summary>
    public required DueReason Reason { get; init; }

    /// <summary>The newest inspection that passed them over; null where none came.</summary>
    public DateOnly? PassedOverDate { get; init; }

    /// <summary>How many inspections passed them over.</summary>
    public int PassedOverCount { get; init; }

    /// <summary>How many locations.</summary>
    public required int Count { get; init; }

    /// <summary>Paths of the first of them.</summary>
    public required IReadOnlyList<string> Locations { get; init; }

    /// <summary>Flight hours to the next look, below 0 where it is past; null where no hours are known.</summary>
    [JsonIgnore]
    public double? HoursToNext => IntervalHours - HoursSince;

    /// <summary>Whether the interval is over.</summary>
    [JsonIgnore]
    public bool IsOverdue => HoursToNext < 0;
}
