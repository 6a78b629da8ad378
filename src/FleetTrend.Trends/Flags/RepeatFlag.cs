using FleetTrend.Records.Actions;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.LocationStandings;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of a place where a condition comes back more often than at the same place of its like.</summary>
internal static class RepeatFlag
{
    /// <summary>The flag.</summary>
    /// <param name="standing">The place against the same place on the others.</param>
    /// <param name="kind">The kind of the place.</param>
    /// <param name="run">What came back there since the last renewal; null where nothing did.</param>
    public static ProposedFlag Propose(LocationStanding standing, LocationKind kind, RepeatLocation? run) => new()
    {
        Subject = FlagSubjects.Repeat(standing.Registration, standing.Location, standing.Condition),
        Kind = FlagKind.RepeatLocation,
        Registration = standing.Registration,
        Base = standing.Base,
        TypeGroup = standing.TypeGroup,
        Condition = standing.Condition,
        Locations = [standing.Location],
        Ratio = standing.Ratio,
        Observed = standing.Observed,
        Expected = standing.Expected.Value,
        Expectation = standing.Expected,
        PValue = standing.PValue,
        QValue = standing.QValue,
        Test = $"events at this location against the same location on the other {standing.OthersCount} aircraft of {standing.TypeGroup}: exact one-sided chance "
            + "of so many, given the location's total (Przyborowski and Wilenski 1940)",
        Family = $"all {NumberWords.Count(standing.Comparisons, "test", "tests")} of an aircraft, a location and a condition that its type group has had there, "
            + "all type groups together (Benjamini and Hochberg 1995)",
        SinceDate = standing.SinceDate,
        Statement = Statement(standing, run),
        WhatToCheck = WhatToCheck.ForRepeat(standing, kind),
    };

    /// <summary>p and q in words: <c>If it were like the rest, a count this high would come up about once in 5,000. ...</c>; no full stop.</summary>
    public static string Chance(LocationStanding standing) =>
        $"{ChanceWords.OfCount(standing.PValue)}. Over all {NumberWords.Count(standing.Comparisons, "location", "locations")} tested, "
        + FirstLetter.Small(ChanceWords.OfCalls(standing.QValue, standing.PValue.Law, ChanceWords.OneRate));

    private static string Statement(LocationStanding standing, RepeatLocation? run) =>
        $"{standing.Registration} has had {ConditionWords.Count(standing.Observed, standing.Condition)} at "
        + $"{LocationWords.Name(standing.Location)} in {NumberWords.Hours(standing.ExposureHours)} watched there{CameBack(run)}. "
        + $"The same spot on the other {standing.OthersCount} aircraft of {standing.TypeGroup} would give "
        + $"{FigureWords.Format(standing.Expected, FigureStyle.Count).Estimate} in those hours. "
        + $"Found over expected: {FigureWords.Format(standing.Ratio, FigureStyle.Times).Estimate}. {Chance(standing)}.";

    private static string CameBack(RepeatLocation? run)
    {
        if (run is null)
            return "";
        var done = ActionWords.CountDone(run.Events.Select(e => e.ClosedBy).OfType<ActionKind>());
        var text = $"; since {NumberWords.Day(run.Events[0].FoundDate)} it came back {NumberWords.Times(RepeatAnalysis.Repeats(run))} "
            + $"with no renewal between{(done.Length > 0 ? $" ({done})" : "")}";
        return run.Events[^1].HoursSinceAction is > 0 and { } hours
            ? $"{text}, the latest {NumberWords.Hours(hours)} after the action before it"
            : text;
    }
}
