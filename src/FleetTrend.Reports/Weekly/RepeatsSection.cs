using FleetTrend.Records.Findings;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Reports.Words;
using FleetTrend.Trends.Locations;

namespace FleetTrend.Reports.Weekly;

/// <summary>Locations where a condition came back after an action that had closed it, and the mean count by age.</summary>
internal static class RepeatsSection
{
    private const int MostRows = 8;
    private const int MostKeys = 4;
    private const int MostEvents = 5;

    public static ReportSection? Of(ReportDraft draft)
    {
        var flying = draft.Fleet.Select(l => l.Registration).ToHashSet(StringComparer.Ordinal);
        // Strongest departure first; the order of the repeats stands where there is none.
        var repeats = draft.Current.Repeats.Where(r => flying.Contains(r.Registration)).OrderBy(r => Standing(draft, r)?.PValue ?? 1).ToList();
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
                blocks.Add(new Block.Paragraph($"The {MostRows} of {repeats.Count} that stand out most.", IsAside: true));
            blocks.Add(new Block.Paragraph(
                "That a place came back is a fact and by itself no flag: in a large fleet some do by chance. Seen and expected are over all hours watched at the "
                + "place, against the same place on the others of the type group; q allows for all places tested. A repair keeps the life; only a replacement starts a new one.",
                IsAside: true));
        }

        if (picture is not null) blocks.Add(picture);
        return new ReportSection("repeats", "Locations that crack or fail again", blocks);
    }

    private static Block.Table Table(ReportDraft draft, List<RepeatLocation> repeats) => new(
        $"Came back after an action, since the last renewal, {draft.AsOf}",
        [new("Tail and place"), new("History"), new("Expected", IsNumeric: true), new("Seen over expected", IsNumeric: true), new("Records")],
        [.. repeats.Take(MostRows).Select(r => Row(draft, r))]);

    private static IReadOnlyList<Line> Row(ReportDraft draft, RepeatLocation repeat)
    {
        var standing = Standing(draft, repeat);
        return
        [
            $"{repeat.Registration}, {LocationWords.Of(repeat.Location)}: {ConditionWords.Count(repeat.Events.Count, repeat.Condition)}",
            Histories(repeat.Events),
            standing is null ? "not compared: no other aircraft was watched there" : draft.Cell(standing.Expected, FigureStyle.AsIs),
            standing is null ? "" : Line.Of(
                draft.Number(standing.Ratio, FigureStyle.Times), $"; {ChanceWords.Named("p", standing.PValue)}, {ChanceWords.Named("q", standing.QValue)}"),
            Keys(repeat),
        ];
    }

    private static LocationStanding? Standing(ReportDraft draft, RepeatLocation repeat) => draft.Current.LocationStandings.FirstOrDefault(s =>
        s.Registration == repeat.Registration && s.TypeGroup == repeat.TypeGroup && s.Location == repeat.Location && s.Condition == repeat.Condition);

    private static string Histories(IReadOnlyList<RepeatEvent> events)
    {
        var shown = string.Join("; ", events.Skip(events.Count - MostEvents).Select(History));
        return events.Count > MostEvents ? $"{events.Count - MostEvents} earlier, then {shown}" : shown;
    }

    private static string History(RepeatEvent e)
    {
        var after = e.HoursSinceAction is { } hours ? $", {NumberWords.Hours(hours)} after that" : string.Empty;
        return $"{NumberWords.Day(e.FoundDate)} at {NumberWords.Hours(e.FoundHours)}{after}: {ActionWords.Of(e.ClosedBy)}";
    }

    private static string Keys(RepeatLocation repeat)
    {
        var shown = string.Join(", ", repeat.Evidence.Take(MostKeys).Select(k => $"{k.Source} {k.SourceRecordId}"));
        return repeat.Evidence.Count > MostKeys ? $"{shown} and {repeat.Evidence.Count - MostKeys} more" : shown;
    }

    private static Block.Picture? Picture(ReportDraft draft, List<RepeatLocation> repeats)
    {
        var trends = draft.Current.Recurrences.Where(t => t.Points.Count > 0 && draft.HasTypeGroup(t.TypeGroup)).ToList();
        var pair = repeats
            .Select(r => (Repeat: (RepeatLocation?)r, Trend: trends.FirstOrDefault(t => t.TypeGroup == r.TypeGroup && t.Location == r.Location && t.Condition == r.Condition)))
            .FirstOrDefault(p => p.Trend is not null);
        var trend = pair.Trend ?? trends
            .Where(t => t.Events > 2 && t.Condition == Condition.Crack)
            .OrderByDescending(t => t.Events).ThenBy(t => t.Location, StringComparer.Ordinal).FirstOrDefault();
        if (trend is null) return null;
        var repeat = pair.Trend is null ? null : pair.Repeat;
        var last = trend.Points[^1];
        var what = $"{ConditionWords.Many(trend.Condition)} per aircraft at {LocationWords.Of(trend.Location)}, {trend.TypeGroup}";
        var confidence = NumberWords.Percent(draft.Current.Parameters.Confidence);
        var mean = $"{NumberWords.Rounded(last.Value)} by {NumberWords.Hours(last.Hours)} ({confidence} interval {NumberWords.Rounded(Math.Max(0, last.Lower))} to {NumberWords.Rounded(last.Upper)}; "
            + $"{NumberWords.Count(trend.Events, "event", "events")} on {NumberWords.Count(trend.AircraftCount, "aircraft", "aircraft")})";
        var alone = repeat is null ? string.Empty : $" {repeat.Registration} alone has had {repeat.Events.Count} since its last renewal.";
        return new Block.Picture(new RecurrencePlot(
            "recurrence",
            $"Step plot of the mean cumulative number of {what} against time in service: {mean}.{alone}",
            $"Mean cumulative number of {what}: {mean}.{alone} Method [{draft.Methods.NumberOf(trend.Method)}], {draft.AsOf}.",
            trend, repeat));
    }
}
