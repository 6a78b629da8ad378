using FleetTrend.Records.Actions;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.LocationStandings;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Standings;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of an aircraft that has more of a condition than its like.</summary>
internal static class DriftFlag
{
    /// <summary>The flag, naming what came back within it, and the place that stands out by itself.</summary>
    /// <param name="standing">The aircraft against its like.</param>
    /// <param name="repeats">Places within that would be flagged by themselves, strongest first.</param>
    /// <param name="run">What came back most within, with no renewal between; null where nothing did.</param>
    /// <param name="kinds">Kinds by name.</param>
    /// <param name="comparisons">Aircraft and conditions tested together.</param>
    public static ProposedFlag Propose(
        AirframeStanding standing, IReadOnlyList<LocationStanding> repeats, RepeatLocation? run,
        IReadOnlyDictionary<string, LocationKind> kinds, int comparisons) => new()
        {
            Subject = FlagSubjects.Drift(standing.Registration, standing.Condition),
            Kind = FlagKind.AirframeDrift,
            Registration = standing.Registration,
            Base = standing.Base,
            TypeGroup = standing.TypeGroup,
            Condition = standing.Condition,
            Locations = [.. standing.Drivers.Select(d => d.Location)],
            Drivers = standing.Drivers,
            Ratio = standing.Ratio,
            Observed = standing.Observed,
            Expected = standing.Expected,
            Expectation = standing.Expectation,
            PValue = standing.PValue,
            QValue = standing.QValue,
            Test = $"events of this aircraft against the other {standing.OthersCount} aircraft of {standing.TypeGroup}, location by location: exact one-sided "
            + "chance of so many, given each location's total (Przyborowski and Wilenski 1940; Breslow and Day 1987)",
            Family = $"all {NumberWords.Count(comparisons, "comparison", "comparisons")} of an aircraft and a condition with its like, all type groups together "
            + "(Benjamini and Hochberg 1995)",
            SinceDate = standing.SinceDate,
            Statement = Statement(standing, repeats, run, comparisons),
            WhatToCheck = WhatToCheck.ForDrift(standing, kinds),
        };

    private static string Statement(
        AirframeStanding standing, IReadOnlyList<LocationStanding> repeats, RepeatLocation? run, int comparisons)
    {
        var text = $"{standing.Registration} has had {ConditionWords.Count(standing.Observed, standing.Condition)}";
        if (standing.Drivers.Count > 0 && standing.Drivers[0] is var worst)
        {
            text += $", {NumberWords.Count(worst.Observed)} of them at {LocationWords.Name(worst.Location)} in "
                + $"{NumberWords.Hours(worst.ExposureHours)} watched there";
        }

        if (run is not null)
            text += CameBack(run, standing.Drivers[0].Location);
        text += $". The other {standing.OthersCount} aircraft of {standing.TypeGroup} would give "
            + $"{FigureWords.Format(standing.Expectation!, FigureStyle.Count).Estimate} in the same hours. "
            + $"Found over expected: {FigureWords.Format(standing.Ratio, FigureStyle.Times).Estimate}. "
            + $"{ChanceWords.OfCount(standing.PValue)}. Of {NumberWords.Count(comparisons, "comparison", "comparisons")} made: "
            + $"{FirstLetter.Small(ChanceWords.OfCalls(standing.QValue, standing.PValue.Law, ChanceWords.OneRate))}.";
        return repeats.Count == 0
            ? text
            : $"{text} By itself {LocationWords.Name(repeats[0].Location)} stands out too. {RepeatFlag.Chance(repeats[0])}.";
    }

    private static string CameBack(RepeatLocation run, string worstLocation)
    {
        var where = run.Location == worstLocation ? "there" : $"at {LocationWords.Name(run.Location)}";
        var done = ActionWords.CountDone(run.Events.Select(e => e.ClosedBy).OfType<ActionKind>());
        return $"; {where} it came back {NumberWords.Times(RepeatAnalysis.Repeats(run))} with no renewal between"
            + (done.Length > 0 ? $" ({done})" : "");
    }
}
