using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.LookLists;

namespace FleetTrend.Reports.Weekly;

/// <summary>The look list of an aircraft, for a page that is printed and taken along.</summary>
public static class LookListSection
{
    private const int MostNamed = 6;
    private const string Boxes = "\u2610 \u2610";

    /// <summary>The list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="asOf">The moment of knowledge.</param>
    public static ReportSection Compose(LookList list, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (list.Lines.Count == 0)
            return new ReportSection("look-list", "Look list", [new Block.Paragraph($"{list.Registration} has a type group without locations, so there is nothing to list.")]);
        // The look that most locations had last is said once.
        var usual = list.Lines.GroupBy(LookListWords.Looked, StringComparer.Ordinal).MaxBy(g => g.Count())!.Key;
        List<Block> blocks = [new Block.Paragraph(LookListWords.Meaning)];
        AddChecks(blocks, list);
        var isLookTold = list.Lines.Any(l => LookListWords.Looked(l) != usual);
        Column[] lastLook = isLookTold ? [new("Last look")] : [];
        blocks.Add(new Block.Table(
            $"{list.Registration}, every location in the order of its layout, as of {NumberWords.Moment(asOf)}. Hours are flight hours. "
                + $"Last looked at: {FirstLetter.Small(usual)}{(isLookTold ? ", where nothing else is said" : "")}. Chance: that the part has failed by its next look, with "
                + $"{NumberWords.PercentInFull(list.Confidence)} limits",
            [new("Location"), new("Stands out because"), new("Found before"), new("Part and chance"), .. lastLook, new("Good, found")],
            [.. list.Lines.Select(l => Row(l, isLookTold ? usual : null))]));
        AddLookFor(blocks, list);
        return new ReportSection("look-list", "Look list for the next visit", blocks);
    }

    private static IReadOnlyList<Line> Row(LookListLine line, string? usual) =>
    [
        line.Reasons.Count > 0 ? Line.Join(new Run.Strong(FirstLetter.Capital(LocationWords.Name(line.Location))))
            : FirstLetter.Capital(LocationWords.Name(line.Location)),
        LookListWords.Reasons(line),
        LookListWords.Before(line),
        LookListWords.Part(line),
        .. usual is null ? (Line[])[] : [LookListWords.Looked(line) is var looked && looked == usual ? "" : looked],
        Boxes,
    ];

    private static void AddChecks(List<Block> blocks, LookList list)
    {
        List<Line> checks = [.. LookListWords.Standing(list).Where(l => l.Checks.Count > 0)
            .Select(l => (Line)$"{FirstLetter.Capital(LocationWords.Name(l.Location))}: {string.Join(' ', l.Checks)}")];
        if (checks.Count == 0) return;
        blocks.Add(new Block.SubHeading("Check besides"));
        blocks.Add(new Block.Bullets(checks));
    }

    /// <summary>What to look for, said once for all locations that share it.</summary>
    private static void AddLookFor(List<Block> blocks, LookList list)
    {
        List<Line> lines = [.. list.Lines.Where(l => l.LookFor.Length > 0).GroupBy(l => l.LookFor, StringComparer.Ordinal)
            .Select(g => (Line)$"{FirstLetter.Capital(LocationWords.List([.. g.Select(l => l.Location)], MostNamed))}: {g.Key}")];
        if (lines.Count == 0) return;
        blocks.Add(new Block.SubHeading("What to look for"));
        blocks.Add(new Block.Bullets(lines));
    }
}
