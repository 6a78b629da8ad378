using FleetTrend.Records.Words;

namespace FleetTrend.Trends.DueLooks;

/// <summary>How a look that is due reads.</summary>
public static class DueLookWords
{
    /// <summary>How the pace of an aircraft is taken, for the foot of a list.</summary>
    public const string Pace =
        "The day is an estimate from the hours of the last 13 weeks before the latest reading or inspection; where the type group has 65 weeks of records, "
        + "scaled by what it flew a year before in the 13 weeks to come over the last 13.";

    /// <summary>Whose intervals count, for every list of what is due.</summary>
    public const string WhoseIntervals =
        "The intervals are your own (Parameters). What the makers, airworthiness directives and the rules ask for comes first.";

    /// <summary>An aircraft in one line: how far past its interval or how soon it is due, where, and why.</summary>
    public static string Statement(DueLook due)
    {
        ArgumentNullException.ThrowIfNull(due);
        var first = due.Groups[0];
        if (due.HoursToNext is not { } hours)
            return $"{due.Registration}: no hours on record, so nothing can be said";
        if (hours >= 0)
            return $"{due.Registration}: next look in {NumberWords.Hours(hours)}{(due.DueDate is { } day ? $", about {NumberWords.Day(day)}" : "")}";
        return $"{due.Registration}: {NumberWords.Count(due.OverdueCount)} of {NumberWords.Count(due.LocationCount, "location", "locations")} past the look interval, "
            + $"by up to {NumberWords.Hours(-hours)}: {Names(first, 2)}; {Why(first)}";
    }

    /// <summary>The first few locations, then how many more.</summary>
    public static string Names(DueGroup group, int most)
    {
        ArgumentNullException.ThrowIfNull(group);
        return LocationWords.List(group.Locations, most, group.Count);
    }

    /// <summary>Why there was no look: <c>could not be examined on 3 Sep 2026, for the 2nd time</c>.</summary>
    public static string Why(DueGroup group)
    {
        ArgumentNullException.ThrowIfNull(group);
        var times = group.PassedOverCount > 1 ? $", {NumberWords.Times(group.PassedOverCount)} since the last look" : "";
        return group switch
        {
            { Reason: DueReason.CouldNotExamine, PassedOverDate: { } day } => $"could not be examined on {NumberWords.Day(day)}{times}",
            { Reason: DueReason.NotExamined, PassedOverDate: { } day } => $"marked not examined on {NumberWords.Day(day)}{times}",
            { Reason: DueReason.NotMentioned, PassedOverDate: { } day } =>
                $"left out by {(group.PassedOverCount > 1 ? $"{NumberWords.Count(group.PassedOverCount)} inspections, the newest" : "the inspection")} of {NumberWords.Day(day)}",
            { LastLookDate: { } day } => $"no inspection since {NumberWords.Day(day)}",
            _ => "no inspection on record",
        };
    }
}
