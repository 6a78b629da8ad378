namespace FleetTrend.Trends.Fleet;

/// <summary>One aircraft in the fleet table.</summary>
public sealed record FleetLine
{
    /// <summary>Registration mark.</summary>
    public required string Registration { get; init; }

    /// <summary>Base.</summary>
    public required string Base { get; init; }

    /// <summary>Type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The day it left the fleet, or null.</summary>
    public DateOnly? RetiredDate { get; init; }

    /// <summary>Latest time in service known; null where none is.</summary>
    public double? LatestHours { get; init; }

    /// <summary>The day of <see cref="LatestHours"/>.</summary>
    public DateOnly? LatestDate { get; init; }

    /// <summary>Hours flown since the latest inspection; null where there was none.</summary>
    public double? HoursSinceInspection { get; init; }

    /// <summary>The day of the latest inspection.</summary>
    public DateOnly? LatestInspectionDate { get; init; }

    /// <summary>Events of any condition in the last 90 days before the as-of day.</summary>
    public required int RecentEvents { get; init; }

    /// <summary>Events of each condition that it ever had; null in trends stored before they were counted.</summary>
    public IReadOnlyList<ConditionCount>? Events { get; init; }

    /// <summary>Events open now: no action has closed them.</summary>
    public required int OpenEvents { get; init; }
}
