using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Growth;

/// <summary>Whether a condition comes more or less often at one kind of place, all aircraft of a type group together.</summary>
public sealed record GrowthTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Name of the kind of location.</summary>
    public required string Kind { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Over the last three years of the calendar.</summary>
    public required GrowthClock Calendar { get; init; }

    /// <summary>Over the time in service of the aircraft; null where the kind is a part that is renewed, whose own age counts.</summary>
    public GrowthClock? Hours { get; init; }
}
