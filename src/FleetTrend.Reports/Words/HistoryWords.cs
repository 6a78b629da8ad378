using FleetTrend.Records.Words;
using FleetTrend.Trends.Repeats;

namespace FleetTrend.Reports.Words;

/// <summary>The history of a place: when each event was found, and each action at its own date.</summary>
public static class HistoryWords
{
    /// <summary>
    /// One event: <c>found 20 Jan 2026 at 812 h, monitored the same day, welded 3 Mar 2026 at 870 h</c>; one that nothing has
    /// closed ends in <c>still open</c>.
    /// </summary>
    public static string Tell(RepeatEvent e)
    {
        ArgumentNullException.ThrowIfNull(e);
        List<string> parts = [Found(e)];
        if (e.HoursSinceAction is { } since)
            parts.Add($"{NumberWords.Hours(since)} after the {(e.SinceAction is { } kind ? ActionWords.Name(kind) : "action before it")}");
        parts.AddRange((e.Actions ?? []).Select(a => a.Date == e.FoundDate
            ? $"{ActionWords.Done(a.Kind)} the same day"
            : $"{ActionWords.Done(a.Kind)} {NumberWords.Day(a.Date)} at {NumberWords.Hours(a.Hours)}"));
        if (End(e) is { } end)
            parts.Add(end);
        return string.Join(", ", parts);
    }

    /// <summary>
    /// How many there are and how many of them count: <c>8 cracks since the renewal at 640 h: 7 counted, 1 already there at the first
    /// look</c>. Only what counts is in a rate.
    /// </summary>
    public static string Counts(RepeatLocation repeat)
    {
        ArgumentNullException.ThrowIfNull(repeat);
        var all = ConditionWords.Count(repeat.Events.Count, repeat.Condition);
        if (repeat.RenewedHours is { } renewed)
            all += $" since the renewal at {NumberWords.Hours(renewed)}";
        if (repeat.Events.Any(e => e.Counting is null))
            return all;
        List<string> parts = [];
        Add(EventCounting.PresentAtEntry, "already there at the first look");
        Add(EventCounting.NotWatched, "found in no watched hours");
        Add(EventCounting.OtherTypeGroup, "counted in an earlier type group");
        return parts.Count == 0 ? all : $"{all}: {NumberWords.Count(Count(EventCounting.Counted))} counted, {string.Join(", ", parts)}";

        int Count(EventCounting counting) => repeat.Events.Count(e => e.Counting == counting);

        void Add(EventCounting counting, string words)
        {
            if (Count(counting) is > 0 and var count)
                parts.Add($"{NumberWords.Count(count)} {words}");
        }
    }

    /// <summary>What there is beside the counted events, and why it does not count; null where there is nothing beside.</summary>
    /// <param name="presentAtEntry">Those that the first look found.</param>
    /// <param name="notWatched">Those found in no watched hours.</param>
    public static string? NotCounted(int presentAtEntry, int notWatched)
    {
        List<string> parts = [];
        if (presentAtEntry > 0)
            parts.Add($"{NumberWords.Count(presentAtEntry, "more was", "more were")} already there at the first look");
        if (notWatched > 0)
            parts.Add($"{NumberWords.Count(notWatched, "more was", "more were")} found in no watched hours");
        return parts.Count == 0 ? null : $"Not counted: {string.Join("; ", parts)}.";
    }

    private static string Found(RepeatEvent e)
    {
        var when = $"{NumberWords.Day(e.FoundDate)} at {NumberWords.Hours(e.FoundHours)}";
        return e.Counting switch
        {
            EventCounting.PresentAtEntry => $"already there at the first look, {when}",
            EventCounting.NotWatched => $"found {when}, in no watched hours",
            _ => $"found {when}",
        };
    }

    // Trends of an earlier version know what closed it and not when.
    private static string? End(RepeatEvent e) => e switch
    {
        { ClosedBy: { } kind } => e.Actions is null ? $"later {ActionWords.Done(kind)}" : null,
        { Actions: null } => "no action recorded that closed it",
        { ClosedDate: { } gone } => $"seen good {NumberWords.Day(gone)} with no action recorded",
        _ => "still open",
    };
}
