namespace FleetTrend.Trends.Silence;

/// <summary>How often something came, and how long ago the last was.</summary>
/// <remarks>
/// Silence is more than twice the longest gap of the two years before, and more than four weeks. Where gaps come at random, the next of n + 1 gaps is
/// that long with chance 2 / ((n + 1) (n + 2)): one in 45 with eight gaps, one in 1,378 with weekly ones. Derived here from exponential gaps: the
/// expectation of exp(-2 M) for the largest M of n. Gaps of a fixed interval never are.
/// </remarks>
/// <param name="LastDate">The last day on which it came.</param>
/// <param name="DaysSince">Days since then.</param>
/// <param name="LongestGapDays">The longest gap between days on which it came, in the two years before the last; 0 without one.</param>
/// <param name="Gaps">Gaps in those years.</param>
public sealed record Habit(DateOnly LastDate, int DaysSince, int LongestGapDays, int Gaps)
{
    private const int MemoryDays = 730;
    private const int FewestGaps = 8;
    private const int FewestDays = 28;

    // Nothing is known of a habit: half a year without a word is asked about all the same.
    private const int DaysWithoutHabit = 182;

    /// <summary>Whether enough came to know a habit.</summary>
    public bool IsKnown => Gaps >= FewestGaps;

    /// <summary>The habit behind some days; null without any.</summary>
    /// <param name="days">The days on which it came, ascending.</param>
    /// <param name="today">The day of knowledge.</param>
    public static Habit? Find(IReadOnlyList<DateOnly> days, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(days);
        if (days.Count == 0)
            return null;
        var last = days[^1];
        List<int> gaps = [.. days.Where(d => d >= last.AddDays(-MemoryDays)).Distinct().Select(d => d.DayNumber)];
        gaps = [.. gaps.Zip(gaps.Skip(1), (a, b) => b - a)];
        return new Habit(last, Math.Max(0, today.DayNumber - last.DayNumber), gaps.DefaultIfEmpty(0).Max(), gaps.Count);
    }

    /// <summary>Whether it is silent now.</summary>
    /// <param name="longestOfOthers">The longest gap that is usual among its like, for one whose own habit is not known; null where none is known.</param>
    public bool IsSilent(int? longestOfOthers = null) => LongestUsual(longestOfOthers) is { } longest
        ? DaysSince > Math.Max(FewestDays, 2 * longest)
        : DaysSince > DaysWithoutHabit;

    /// <summary>The longest gap that is usual, days: its own, else the median of its type group; null where neither is known.</summary>
    public int? LongestUsual(int? longestOfOthers = null) => IsKnown ? LongestGapDays : longestOfOthers;
}
