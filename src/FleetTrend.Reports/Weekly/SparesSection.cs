using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Scores;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Reports.Weekly;

/// <summary>What to order: the few parts that fall short in a report; what every base will need on a page.</summary>
public static class SparesSection
{
    private const int MostLines = 5;
    private const int MostRows = 75;

    /// <summary>Every base and part of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        List<SpareNeed> told = [.. snapshot.Spares.Where(s => s.Horizons.Count > 0)];
        List<SpareNeed> untold = [.. snapshot.Spares.Where(s => s.Horizons.Count == 0)];
        List<Block> blocks = [];
        if (snapshot.Spares.Count == 0)
            blocks.Add(new Block.Paragraph($"No part in service is known, {asOf}."));
        else if (told.Count == 0)
            blocks.Add(new Block.Paragraph($"Not enough data, {asOf}: a kind of part is foreseen once {snapshot.Parameters.MinimumFailuresForFit} of it have failed and their ages are known."));
        if (told.Count > 0)
        {
            AddOff(blocks, snapshot.Scores);
            blocks.Add(new Block.Paragraph(SpareWords.Meaning));
            if (told.TrueForAll(s => s.Stock is null))
                blocks.Add(new Block.Paragraph("No stock has been told. Push a stock count (base, part number, quantity) and this page says what is missing."));
            List<SpareNeed> shorts = [.. told.Where(s => s.Shortage is not null)];
            if (shorts.Count > 0)
                blocks.Add(new Block.Bullets([.. shorts.Take(MostLines).Select(s => (Line)$"{SpareWords.Statement(s)}.")]));
            blocks.Add(Table(told, asOf));
            if (told.Count > MostRows)
                blocks.Add(new Block.Paragraph($"{NumberWords.Count(told.Count - MostRows)} more that need fewer. ListSpares has all of them.", IsAside: true));
        }

        if (untold.Count > 0 && told.Count > 0)
            blocks.Add(new Block.Paragraph("Nothing firm can be said of these:"));
        if (untold.Count > 0)
            blocks.Add(new Block.Bullets([.. untold.Take(MostRows).Select(s => (Line)$"{SpareWords.Statement(s)}.")]));
        if (told.Count > 0)
            blocks.Add(new Block.Paragraph($"How it is worked out: {SpareWords.Method}", IsAside: true));
        return new ReportSection("spares", "Spares", blocks);
    }

    /// <summary>What is missing on the shelves of a report's scope, in the order of the analysis.</summary>
    internal static IReadOnlyList<SpareNeed> ListShort(ReportDraft draft) =>
        [.. draft.Current.Spares.Where(s => s.Shortage is not null && draft.Scope.Covers(s.Base))];

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var shorts = ListShort(draft);
        if (shorts.Count == 0) return null;
        List<Block> blocks = [new Block.Bullets([.. shorts.Take(MostLines).Select(s => (Line)$"{SpareWords.Statement(s)}.")])];
        AddOff(blocks, ScoresSection.InScope(draft));
        var rest = shorts.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
        {
            var more = rest > 0 ? $"{NumberWords.Count(rest)} more, and what every base will need" : "What every base will need";
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "spares"))), IsAside: true));
        }
        else if (rest > 0)
        {
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        }

        return new ReportSection("spares", "What to order", blocks);
    }

    // A reader of these figures has to know before he orders by them.
    private static void AddOff(List<Block> blocks, IEnumerable<Score> scores)
    {
        foreach (var off in ScoreWords.SparesOff(scores))
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Strong(FirstLetter.Capital(off)))));
    }

    private static Block.Table Table(List<SpareNeed> told, string asOf)
    {
        var first = told[0];
        return new Block.Table(
            $"Parts that will be needed, what falls short first, {asOf}: {NumberWords.PercentInFull(first.Confidence)} range, and in brackets the stock that is enough with a chance of "
                + NumberWords.PercentInFull(first.ServiceLevel),
            [
                new("Base"), new("Part"), new("In service", true),
                .. first.Horizons.Select(h => new Column($"{NumberWords.Count(h.Days)} days", true)), new("On hand", true), new("Missing", true), new("Notes"),
            ],
            [.. told.Take(MostRows).Select(Row)]);
    }

    private static IReadOnlyList<Line> Row(SpareNeed need) =>
    [
        need.Base,
        FirstLetter.Capital(SpareWords.Name(need)) + (need.PartNumber is null ? $", {need.TypeGroups[0]}" : ""),
        NumberWords.Count(need.Parts),
        .. need.Horizons.Select(h => (Line)$"{SpareWords.Range(need, h)} ({NumberWords.Count(need.Needed(h))})"),
        need.Stock is { } stock ? NumberWords.Count(stock.OnHand) : "not told",
        need.Shortage is { } shortage ? $"{NumberWords.Count(shortage.Missing)} within {NumberWords.Count(shortage.Horizon.Days, "day", "days")}" : "",
        SpareWords.Notes(need),
    ];
}
