using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Flags by themselves, for pages: the card of one as in the weekly report, and a table of many.</summary>
public static class FlagSection
{
    /// <summary>The card of one flag, with the methods of its numbers.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="flag">The flag, not closed.</param>
    /// <param name="pages">Where the pages are.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, FlagLine flag, Uri pages)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(flag);
        var draft = Draft(snapshot, [flag], pages);
        List<Block> blocks = [.. TailsSection.Compose(draft).Blocks.Where(block => block is Block.Card)];
        AddMethods(draft, blocks);
        return new ReportSection("flag", "What it says", blocks);
    }

    /// <summary>A table of flags in the order given.</summary>
    /// <param name="snapshot">The trends.</param>
    /// <param name="heading">Heading of the section.</param>
    /// <param name="flags">The flags.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, string heading, IReadOnlyList<FlagRow> flags)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(flags);
        if (flags.Count == 0)
            return new ReportSection("flags", heading, [new Block.Paragraph("None. That is no sign that all is well.")]);
        var draft = Draft(snapshot, [], null);
        Column[] columns = [new("Tail or base"), new("What it says"), new("Beside its like"), new("State"), new("Flag")];
        List<Block> blocks =
        [
            new Block.Table(
                $"Flags, newest first, {draft.AsOf}; numbers are those of the last refresh that saw the flag", columns,
                [.. flags.Select(row => (IReadOnlyList<Line>)
                [
                    FlagOrder.Subject(row.Flag),
                    FirstLetter.Capital(FlagHeadline.Predicate(row.Flag)) + ".",
                    draft.Cell(row.Flag.Ratio, FigureStyle.Times),
                    row.State,
                    Line.Join(new Run.Link($"See flag {row.Number}", row.Page)),
                ])]),
        ];
        AddMethods(draft, blocks);
        return new ReportSection("flags", heading, blocks);
    }

    private static ReportDraft Draft(TrendSnapshot snapshot, IReadOnlyList<FlagLine> flags, Uri? pages)
    {
        var today = DateOnly.FromDateTime(snapshot.AsOf.UtcDateTime);
        return new ReportDraft(snapshot, null, new ReportInputs
        {
            Scope = ReportScope.WholeFleet,
            Period = new ReportPeriod(today, today),
            Flags = flags,
            PagesUrl = pages,
        });
    }

    private static void AddMethods(ReportDraft draft, List<Block> blocks)
    {
        if (draft.Methods.Names.Count == 0)
            return;
        blocks.Add(new Block.SubHeading("Methods"));
        blocks.Add(new Block.Bullets([.. draft.Methods.Names.Select((name, i) => (Line)$"[{i + 1}] {name}")]));
    }
}
