using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Repeats;

/// <summary>One event of a location that repeats.</summary>
/// <param name="FoundDate">The day it was found.</param>
/// <param name="FoundHours">Time in service then.</param>
/// <param name="HoursSinceAction">Hours since the action before it; null for the first.</param>
/// <param name="ClosedBy">The action that closed it; null while open, or where a good look closed it and no action is recorded.</param>
public sealed record RepeatEvent(DateOnly FoundDate, double FoundHours, double? HoursSinceAction, ActionKind? ClosedBy)
{
    /// <summary>The action that <see cref="HoursSinceAction"/> counts from; null for the first, and in trends of an earlier version.</summary>
    public ActionKind? SinceAction { get; init; }

    /// <summary>The day it was closed; null while open, and in trends of an earlier version.</summary>
    public DateOnly? ClosedDate { get; init; }

    /// <summary>
    /// Every action taken while it was open, in order, each with its own day, the one that closed it last; null in trends of an
    /// earlier version.
    /// </summary>
    public IReadOnlyList<RepeatAction>? Actions { get; init; }

    /// <summary>Whether it counts in the rate of the place; null in trends of an earlier version.</summary>
    public EventCounting? Counting { get; init; }
}
