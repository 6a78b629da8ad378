using FleetTrend.Records.Actions;
using FleetTrend.Trends.Locations;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of a place where a condition keeps coming back with no renewal between.</summary>
internal static class RepeatFlag
{
    /// <summary>The flag.</summary>
    public static ProposedFlag Of(RepeatLocation repeat) => new()
    {
        Subject = $"repeat-location/{repeat.Registration}/{repeat.Location}/{repeat.Condition}",
        Kind = FlagKind.RepeatLocation,
        Registration = repeat.Registration,
        Base = repeat.Base,
        TypeGroup = repeat.TypeGroup,
        Condition = repeat.Condition,
        Locations = [repeat.Location],
        Ratio = repeat.Ratio,
        Observed = repeat.Events.Count,
        Expected = repeat.Expected,
        SinceDate = repeat.Events[0].FoundDate,
        Statement = Statement(repeat),
        WhatToCheck = Checks.ForRepeat(repeat),
    };

    private static string Statement(RepeatLocation repeat)
    {
        var done = Words.DoneOften(repeat.Events.Select(e => e.ClosedBy).OfType<ActionKind>());
        var text = $"{repeat.Registration} has had {Words.Events(repeat.Events.Count, repeat.Condition)} at {repeat.Location} since "
            + $"{Words.Day(repeat.Events[0].FoundDate)} with no renewal between";
        text += done.Length > 0 ? $" ({done})" : "";
        if (repeat.Events[^1].HoursSinceAction is > 0 and { } hours)
            text += $", the latest {Words.Number(hours)} h after the action before it";
        return repeat.Expected is { } expected
            ? $"{text}; {Words.Number(expected)} would be expected in the {Words.Number(repeat.ExposureHours)} h watched there at the rate of "
              + $"the other aircraft ({Words.Ratio(repeat.Ratio)}; raised because it came back {RepeatLocations.Repeats(repeat)} times, not by a test)."
            : $"{text}, in {Words.Number(repeat.ExposureHours)} h watched there; no other aircraft was watched there to compare with.";
    }
}
