using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Silence;

/// <summary>How a silence reads.</summary>
public static class SilenceWords
{
    /// <summary>What to ask, for every list of silences.</summary>
    public const string Question =
        "Is it not flying, or does a tool no longer send? Nothing found on it is known since then, and no news is no evidence that it is sound.";

    /// <summary>The rule, for the foot of a list.</summary>
    public const string Rule =
        "Listed is what has sent nothing for more than twice its longest gap of two years before, and more than four weeks. Where too little "
        + "has come to know that gap, the median of the longest gaps in its type group counts; where that is not known either, half a year.";

    /// <summary>How many of those that fly are silent, in one sentence.</summary>
    /// <param name="silent">Those that are silent.</param>
    /// <param name="flying">How many fly, as far as is known.</param>
    public static string Counted(IReadOnlyList<AircraftSilence> silent, int flying)
    {
        ArgumentNullException.ThrowIfNull(silent);
        return silent.Count(s => !s.HoursStillCome) == flying
            ? "No aircraft sends any more: every figure is of the days before."
            : $"No longer sending as before: {NumberWords.Count(silent.Count)} of {NumberWords.Count(flying)} aircraft.";
    }

    /// <summary>A silence in one line: <c>ZZ-A07: nothing since 3 Jan 2026, 311 days; before that never longer than 41 days</c>.</summary>
    public static string Statement(AircraftSilence silence)
    {
        ArgumentNullException.ThrowIfNull(silence);
        var what = silence.HoursStillCome ? "hours come, but no inspection" : "nothing";
        var since = silence.LastDate is { } day ? $"since {NumberWords.Day(day)}, {Days(silence.DaysSince)}" : $"ever, in {Days(silence.DaysSince)}";
        var usual = silence switch
        {
            { LongestGapDays: { } longest, IsOwnGap: true } => $"; before that never longer than {Days(longest)}",
            { LongestGapDays: { } longest } => $"; half of its type group never went longer than {Days(longest)}",
            _ => "",
        };
        return $"{silence.Registration}: {what} {since}{usual}";
    }

    /// <summary>The same of a source: <c>Source west: nothing since 3 Jan 2026, 40 days; before that never longer than 4 days</c>.</summary>
    /// <param name="source">Its name.</param>
    /// <param name="habit">Its habit.</param>
    public static string Statement(string source, Habit habit)
    {
        ArgumentNullException.ThrowIfNull(habit);
        var usual = habit.IsKnown ? $"; before that never longer than {Days(habit.LongestGapDays)}" : "";
        return $"Source {source}: nothing since {NumberWords.Day(habit.LastDate)}, {Days(habit.DaysSince)}{usual}";
    }

    private static string Days(int days) => NumberWords.Count(days, "day", "days");
}
