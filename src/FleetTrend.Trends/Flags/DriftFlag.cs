using FleetTrend.Records.Actions;
using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.Locations;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of an aircraft that has more of a condition than its like.</summary>
internal static class DriftFlag
{
    /// <summary>The flag, naming the places that repeat within it.</summary>
    public static ProposedFlag Of(AirframeStanding standing, IReadOnlyList<RepeatLocation> repeats, TrendSnapshot snapshot) => new()
    {
        Subject = $"airframe-drift/{standing.Registration}/{standing.Condition}",
        Kind = FlagKind.AirframeDrift,
        Registration = standing.Registration,
        Base = standing.Base,
        TypeGroup = standing.TypeGroup,
        Condition = standing.Condition,
        Locations = [.. standing.Drivers.Select(d => d.Location)],
        Ratio = standing.Ratio,
        Observed = standing.Observed,
        Expected = standing.Expected,
        PValue = standing.PValue,
        QValue = standing.QValue,
        SinceDate = standing.SinceDate,
        Statement = Statement(standing, repeats, snapshot.Airframes.Count),
        WhatToCheck = Checks.ForDrift(standing),
    };

    private static string Statement(AirframeStanding standing, IReadOnlyList<RepeatLocation> repeats, int comparisons)
    {
        var text = $"{standing.Registration} has had {Words.Events(standing.Observed, standing.Condition)} where "
            + $"{Words.Number(standing.Expected)} would be expected in the same hours at "
            + $"the rate of the other {standing.OthersCount} aircraft of {standing.TypeGroup} ({Words.Ratio(standing.Ratio)})";
        if (standing.Drivers.Count > 0 && standing.Drivers[0] is var worst)
            text += $", {worst.Observed} of them at {worst.Location} in {Words.Number(worst.ExposureHours)} h watched there";
        if (repeats.Count > 0)
            text += Repeat(repeats[0], standing.Drivers[0].Location);
        return text + $"; were it like the others, the chance of so many would be {Words.Chance(standing.PValue)}, and among calls as "
            + $"strong as this, over all {comparisons:#,0} comparisons made, {Words.Percent(standing.QValue)} would be by chance.";
    }

    private static string Repeat(RepeatLocation repeat, string worstLocation)
    {
        var place = repeat.Location == worstLocation ? "there" : $"at {repeat.Location}";
        var times = RepeatLocations.Repeats(repeat);
        var done = Words.DoneOften(repeat.Events.Select(e => e.ClosedBy).OfType<ActionKind>());
        return $"; {place} it came back {(times == 1 ? "once" : $"{times} times")} with no renewal between{(done.Length > 0 ? $" ({done})" : "")}";
    }
}
