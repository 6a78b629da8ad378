using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Fleet;

namespace FleetTrend.Reports.Weekly;

/// <summary>The fleet table.</summary>
public static class FleetSection
{
    private const int MostLines = 50;

    private static readonly Column[] Columns =
    [
        new("Tail"), new("Base"), new("Type group"), new("Hours", true), new("Since inspection", true), new("Open", true), new("90 days", true), new("Flags"),
    ];

    /// <summary>The fleet table of a snapshot by itself, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="flags">Flags that are not closed.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, IReadOnlyList<FlagLine> flags)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return Compose(ReportDraft.OfPage(snapshot, flags), AircraftLink.OnPage);
    }

    internal static ReportSection Compose(ReportDraft draft) => Compose(draft, mark => AircraftLink.InMail(mark, draft.Inputs.PagesUrl));

    private static ReportSection Compose(ReportDraft draft, Func<string, Line> mark)
    {
        if (draft.Fleet.Count == 0)
            return new ReportSection("fleet", "Fleet", [new Block.Paragraph("No aircraft on record here.")]);
        var flags = draft.Flags.Where(f => f.Flag.Registration is not null)
            .GroupBy(f => f.Flag.Registration!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First().State, StringComparer.Ordinal);
        var retired = draft.Current.Fleet.Count(l => l.RetiredDate is not null && draft.Scope.Covers(l.Base));
        // Of a large fleet the aircraft that ask for something; a table of a thousand lines is read by nobody.
        var shown = draft.Fleet.Count <= MostLines ? draft.Fleet :
        [
            .. draft.Fleet
                .OrderByDescending(l => flags.ContainsKey(l.Registration)).ThenByDescending(l => l.OpenEvents).ThenByDescending(l => l.RecentEvents)
                .ThenBy(l => l.Registration, StringComparer.Ordinal)
                .Take(MostLines)
                .OrderBy(l => l.Registration, StringComparer.Ordinal),
        ];
        List<Block> blocks =
        [
            new Block.Table(
                $"Fleet, {draft.AsOf}: time in service and hours since the last inspection. "
                    + "Open: findings that no action has closed and no later look found gone. 90 days: found in the last 90 days. "
                    + "Both with what the first look found",
                Columns,
                [.. shown.Select(l => Row(l, flags, mark))]),
        ];
        if (shown.Count < draft.Fleet.Count)
        {
            blocks.Add(new Block.Paragraph(
                $"These {MostLines} of {NumberWords.Count(draft.Fleet.Count)} aircraft have a flag, or the most open or recent findings. The pages list all.", IsAside: true));
        }

        if (retired > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(retired, "aircraft that left the fleet is", "aircraft that left the fleet are")} not shown; their hours stay in the norms.", IsAside: true));
        return new ReportSection("fleet", "Fleet", blocks);
    }

    private static IReadOnlyList<Line> Row(FleetLine line, Dictionary<string, FlagLineState> flags, Func<string, Line> mark) =>
    [
        mark(line.Registration),
        line.Base,
        line.TypeGroup,
        line.LatestHours is { } hours ? NumberWords.Hours(hours) : "none known",
        line.HoursSinceInspection is { } since ? NumberWords.Hours(since) : "no inspection",
        NumberWords.Count(line.OpenEvents),
        NumberWords.Count(line.RecentEvents),
        flags.TryGetValue(line.Registration, out var state) ? state switch { FlagLineState.New => "new", FlagLineState.Open => "open", _ => "acknowledged" } : "",
    ];
}
