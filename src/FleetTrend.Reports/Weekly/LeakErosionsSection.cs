using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.LeakErosions;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Leaks that are open, with the chance of an eroded port face: the first few in a report; all of them, and what became of earlier ones, on
/// a page.</summary>
public static class LeakErosionsSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;
    private const string Heading = "Leak to eroded face";

    /// <summary>All type groups of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.LeakErosions.Count == 0)
            return new ReportSection("leak-erosions", Heading, [new Block.Paragraph($"No leak at an exhaust port is recorded, {asOf}: we have no case yet.")]);
        List<Block> blocks = [new Block.Paragraph(LeakErosionWords.Meaning)];
        foreach (var erosion in snapshot.LeakErosions)
        {
            blocks.Add(new Block.SubHeading(erosion.TypeGroup));
            blocks.Add(new Block.Paragraph(LeakErosionWords.Statement(erosion)));
            blocks.Add(new Block.Table(
                $"Port faces eroded by so many flight hours since the first trace, {asOf}",
                [new("Flight hours left"), new("Found eroded by then", true), new("Found good so long", true), new("Share eroded", true)],
                [.. erosion.Shares.Select(s => (Line[])
                [
                    NumberWords.Hours(s.Hours), NumberWords.Count(s.Known), NumberWords.Count(s.Good), FigureWords.Format(s.Share, FigureStyle.Chance).Estimate,
                ])]));
        }

        var open = snapshot.LeakErosions.SelectMany(e => e.Open).ToList();
        blocks.Add(open.Count == 0
            ? new Block.Paragraph("No leak at an exhaust port is open now.")
            : new Block.Bullets([.. open.Take(MostRows).Select(o => (Line)$"{LeakErosionWords.Statement(o)}.")]));
        if (open.Count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(open.Count - MostRows)} more. ListLeakErosions has all of them.", IsAside: true));
        blocks.Add(new Block.Paragraph(
            $"How it is worked out: {string.Join("; ", snapshot.LeakErosions.SelectMany(e => e.Shares).Select(s => s.Share.Method).Distinct(StringComparer.Ordinal))}.", IsAside: true));
        return new ReportSection("leak-erosions", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var open = draft.Current.LeakErosions.SelectMany(e => e.Open).Where(o => draft.Scope.Covers(o.Base)).ToList();
        if (open.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. open.Take(MostLines).Select(o => (Line)$"{LeakErosionWords.Statement(o)}.")])];
        var rest = open.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
        {
            var more = rest > 0 ? $"{NumberWords.Count(rest)} more, and what became of earlier leaks" : "What became of earlier leaks";
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "leaks"))), IsAside: true));
        }
        else if (rest > 0)
        {
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        }

        return new ReportSection("leak-erosions", Heading, blocks);
    }
}
