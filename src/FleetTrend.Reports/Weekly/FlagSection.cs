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
        var draft = ReportDraft.OfPage(snapshot, [flag], pages);
        List<Block> blocks = [.. TailsSection.Compose(draft).Blocks.Where(block => block is Block.Card)];
        blocks.AddRange(draft.MethodBlocks());
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
        var draft = ReportDraft.OfPage(snapshot);
        Column[] columns = [new("Tail or base"), new("What it says"), new("Beside the others"), new("State"), new("Flag")];
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
        blocks.AddRange(draft.MethodBlocks());
        return new ReportSection("flags", heading, blocks);
    }
}
