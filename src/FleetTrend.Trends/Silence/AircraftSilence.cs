using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Silence;

/// <summary>An aircraft that flies as far as is known, and of which nothing comes any more.</summary>
public sealed record AircraftSilence
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its present base.</summary>
    public required string Base { get; init; }

    /// <summary>Its present type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Whether its hours still come and only inspections do not.</summary>
    public required bool HoursStillCome { get; init; }

    /// <summary>The last day with hours of it, or the last inspection; null where there never was one.</summary>
    public DateOnly? LastDate { get; init; }

    /// <summary>Days since then, or since its records are complete.</summary>
    public required int DaysSince { get; init; }

    /// <summary>The longest gap before that, days: its own, or the median of its type group where too little came of it; null where neither is known.</summary>
    public int? LongestGapDays { get; init; }

    /// <summary>Whether that gap is its own.</summary>
    public bool IsOwnGap { get; init; }

    /// <summary>The inspections of the last day on which something was examined, or the records that describe it.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
