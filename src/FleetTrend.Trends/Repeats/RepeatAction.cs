using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Repeats;

/// <summary>An action taken on an event of a location that repeats.</summary>
/// <param name="Kind">What was done.</param>
/// <param name="Date">The day it was done.</param>
/// <param name="Hours">Time in service then.</param>
public sealed record RepeatAction(ActionKind Kind, DateOnly Date, double Hours);
