using FleetTrend.Records.Findings;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Reports.Words;
using FleetTrend.Trends.RecurrenceContrasts;
using FleetTrend.Trends.Recurrences;
using FleetTrend.Trends.Repeats;

namespace FleetTrend.Reports.Weekly;

/// <summary>Locations where a condition came back after an action that had closed it, and the mean count by age.</summary>
internal static class RepeatsSection
{
    private const int MostRows = 8;
    private const int MostKeys = 4;
    private const int MostEvents = 5;

    public static ReportSection? Compose(ReportDraft draft)
    {
        var flying = draft.Fleet.Select(l => l.Registration).ToHashSet(StringComparer.Ordinal);
        var repeats = draft.Current.Repeats.Where(r => flying.Contains(r.Registration)).ToList();
        var picture = Picture(draft, repeats);
        if (repeats.Count == 0 && picture is null) return null;
        List<Block> blocks = [];
        if (repeats.Count == 0)
        {
            blocks.Add(new Block.Paragraph("No location came back after a repair since its last renewal, in the records."));
        }
        else
        {
            blocks.Add(Table(draft, repeats));
            if (repeats.Count > MostRows)
                blocks.Add(new Block.Paragraph($"The {MostRows} of {repeats.Count} that came back most often.", IsAside: true));
            blocks.Add(new Block.Paragraph(
                "A repeat alone doesn't raise a flag: in a large fleet some places have one by chance. Counted are those found in watched hours; "
                + "what was already there at the first look is listed and in no rate. A repair keeps the life; only a replacement starts a new one.",
                IsAside: true));
        }

        if (picture is not null) blocks.Add(picture);
        return new ReportSection("repeats", "Locations that crack or fail again", blocks);
    }

    private static Block.Table Table(ReportDraft draft, List<RepeatLocation> repeats) => new(
        $"Came back after an action, since the last renewal, {draft.AsOf}",
        [new("Tail and place"), new("History"), new("Same location on others", IsNumeric: true), new("Records")],
        [.. repeats.Take(MostRows).Select(Row)]);

    private static IReadOnlyList<Line> Row(RepeatLocation repeat) =>
    [
        $"{repeat.Registration}, {LocationWords.Name(repeat.Location)}: {HistoryWords.Counts(repeat)}",
        Histories(repeat.Events),
        repeat.Others is { } others
            ? $"{(others.Found == 0 ? "none" : NumberWords.Count(others.Found))} in {NumberWords.Hours(others.Hours)} on {NumberWords.Count(others.Count, "aircraft", "aircraft")}"
            : "no other aircraft was watched there",
        Keys(repeat),
    ];

    private static string Histories(IReadOnlyList<RepeatEvent> events)
    {
        var shown = string.Join("; ", events.Skip(events.Count - MostEvents).Select(HistoryWords.Tell));
        return events.Count > MostEvents ? $"{events.Count - MostEvents} earlier, then {shown}" : shown;
    }

    private static string Keys(RepeatLocation repeat)
    {
        var shown = string.Join(", ", repeat.Evidence.Take(MostKeys).Select(k => $"{k.Source} {ForeignText.Identifier(k.SourceRecordId)}"));
        return repeat.Evidence.Count > MostKeys ? $"{shown} and {repeat.Evidence.Count - MostKeys} more" : shown;
    }

    private static Block.Picture? Picture(ReportDraft draft, List<RepeatLocation> repeats)
    {
        var contrasts = draft.Current.RecurrenceContrasts.Where(c => c.OthersCount > 0 && draft.HasTypeGroup(c.TypeGroup)).ToList();
        var contrast = repeats
            .Select(r => contrasts.FirstOrDefault(c =>
                c.Registration == r.Registration && c.TypeGroup == r.TypeGroup && c.Location == r.Location && c.Condition == r.Condition))
            .FirstOrDefault(c => c is not null);
        if (contrast is not null)
            return Beside(draft, contrast);
        var trend = draft.Current.Recurrences
            .Where(t => t.Points.Count > 0 && draft.HasTypeGroup(t.TypeGroup) && t.Events > 2 && t.Condition == Condition.Crack)
            .OrderByDescending(t => t.Events).ThenBy(t => t.Location, StringComparer.Ordinal).FirstOrDefault();
        return trend is null ? null : All(draft, trend);
    }

    private static Block.Picture Beside(ReportDraft draft, RecurrenceContrast contrast)
    {
        var what = $"{ConditionWords.Many(contrast.Condition)} per aircraft at {LocationWords.Name(contrast.Location)}";
        var others = $"mean of the other {NumberWords.Count(contrast.OthersCount)} aircraft of {contrast.TypeGroup}";
        var mean = contrast.Others.Count == 0
            ? $"none of them had one by {NumberWords.Hours(contrast.OthersWatched[^1].ToHours)}"
            : Mean(draft, contrast.Others[^1], contrast.OthersEvents, contrast.OthersCount);
        var alone = $"{contrast.Registration} alone had {NumberWords.Count(contrast.FoundHours.Count)} by its last look at "
            + $"{NumberWords.Hours(contrast.Watched[^1].ToHours)}.";
        if (HistoryWords.NotCounted(contrast.PresentAtEntryCount, contrast.NotWatchedCount) is { } more)
            alone += " " + more;
        return draft.Show(new RecurrencePlot(
            "recurrence",
            $"Step plot of {what} against time in service. {FirstLetter.Capital(others)}: {mean}. {alone}",
            $"Cumulative number of {what}. Line with its band: the {others}, without {contrast.Registration}: {mean}. A dot at each: {alone} "
                + $"Lines end with the last look. Method [{draft.Methods.NumberOf(contrast.Method)}], {draft.AsOf}.",
            contrast));
    }

    private static Block.Picture All(ReportDraft draft, RecurrenceTrend trend)
    {
        var what = $"{ConditionWords.Many(trend.Condition)} per aircraft at {LocationWords.Name(trend.Location)}, {trend.TypeGroup}";
        var mean = Mean(draft, trend.Points[^1], trend.Events, trend.AircraftCount);
        return draft.Show(new RecurrencePlot(
            "recurrence",
            $"Step plot of the mean cumulative number of {what} against time in service: {mean}.",
            $"Mean cumulative number of {what}, with its band, over all aircraft: {mean}. The line ends with the last look. "
                + $"Method [{draft.Methods.NumberOf(trend.Method)}], {draft.AsOf}.",
            trend));
    }

    private static string Mean(ReportDraft draft, MeanCumulativePoint last, int events, int aircraft) =>
        $"{NumberWords.Rounded(last.Value)} by {NumberWords.Hours(last.Hours)} ({NumberWords.PercentInFull(draft.Current.Parameters.Confidence)} interval "
        + $"{NumberWords.Rounded(Math.Max(0, last.Lower))} to {NumberWords.Rounded(last.Upper)}; "
        + $"{NumberWords.Count(events, "event", "events")} on {NumberWords.Count(aircraft, "aircraft", "aircraft")})";
}
