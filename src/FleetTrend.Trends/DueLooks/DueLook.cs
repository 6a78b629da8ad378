using System.Text.Json.Serialization;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.DueLooks;

/// <summary>When an aircraft is due for a look, by the look intervals of its locations and by how much it flies.</summary>
public sealed record DueLook
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Its type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Latest time in service known; null where none is.</summary>
    public double? LatestHours { get; init; }

    /// <summary>The day of <see cref="LatestHours"/>.</summary>
    public DateOnly? LatestDate { get; init; }

    /// <summary>Flight hours a week that it is taken to fly next; null where too little is known.</summary>
    public double? HoursPerWeek { get; init; }

    /// <summary>By how much <see cref="HoursPerWeek"/> was scaled for the season; null where no year before is known.</summary>
    public double? Season { get; init; }

    /// <summary>Flight hours from the latest known to the first look that is due, below 0 where it is past; null where no hours are known.</summary>
    public double? HoursToNext { get; init; }

    /// <summary>The day on which it has flown them, counted from <see cref="LatestDate"/>; null where it can't be told.</summary>
    public DateOnly? DueDate { get; init; }

    /// <summary>Locations of its layout.</summary>
    public required int LocationCount { get; init; }

    /// <summary>Those past their look interval.</summary>
    public required int OverdueCount { get; init; }

    /// <summary>Its locations by interval and last look, the first due first.</summary>
    public required IReadOnlyList<DueGroup> Groups { get; init; }

    /// <summary>The last looks at what is past its interval or due first, and the inspections that passed it over.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>Whether anything is past its interval.</summary>
    [JsonIgnore]
    public bool IsOverdue => OverdueCount > 0;
}
