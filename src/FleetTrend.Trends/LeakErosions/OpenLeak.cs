using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.LeakErosions;

/// <summary>A leak at a joint with a port face that is open now.</summary>
public sealed record OpenLeak
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Path of the location that leaks.</summary>
    public required string Location { get; init; }

    /// <summary>Path of its port face.</summary>
    public required string Face { get; init; }

    /// <summary>The day of its first trace.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>Flight hours since then.</summary>
    public required double HoursLeft { get; init; }

    /// <summary>Flight hours from the first trace to the last look that found the face good; 0 where nobody has looked at it since.</summary>
    public required double GoodHours { get; init; }

    /// <summary>Flight hours from the first trace to the next look: a look interval after the last, or now where that is past.</summary>
    public required double NextLookHours { get; init; }

    /// <summary>Whether the face is known to be eroded already.</summary>
    public required bool IsEroded { get; init; }

    /// <summary>Chance that the face erodes, or has eroded, between the last good look at it and the next look; null where it is eroded already.</summary>
    public Figure? Chance { get; init; }

    /// <summary>The records of the leak.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
