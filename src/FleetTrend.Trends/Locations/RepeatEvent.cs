using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Locations;

/// <summary>One event of a location that repeats.</summary>
/// <param name="FoundDate">The day it was found.</param>
/// <param name="FoundHours">Time in service then.</param>
/// <param name="HoursSinceAction">Hours since the action before it; null for the first.</param>
/// <param name="ClosedBy">The action that closed it; null while open.</param>
public sealed record RepeatEvent(DateOnly FoundDate, double FoundHours, double? HoursSinceAction, ActionKind? ClosedBy);
