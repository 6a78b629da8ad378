using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Text;

/// <summary>Blocks as plain text.</summary>
internal sealed class TextBlocks(TextLines text)
{
    // A longer address would be cut by the width of a line, and a cut address leads nowhere.
    private const int LongestAddress = 56;

    public void Write(Block block, int indent)
    {
        switch (block)
        {
            case Block.Paragraph paragraph:
                text.Wrapped(Words(paragraph.Line), indent);
                break;
            case Block.SubHeading heading:
                text.Blank();
                text.Wrapped(heading.Text + ":", indent);
                break;
            case Block.Bullets bullets:
                foreach (var item in bullets.Items) text.Wrapped("- " + Words(item), indent, hanging: 2);
                break;
            case Block.Table table:
                Table(table, indent);
                break;
            case Block.Card card:
                Card(card, indent);
                break;
            case Block.Picture picture:
                text.Blank();
                text.Wrapped($"[Plot: {picture.AltText}]", indent);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown kind of block.");
        }
    }

    private static string Words(Line line) => string.Concat(line.Runs.Select(Words));

    private static string Words(Run run) => run switch
    {
        Run.Plain plain => plain.Text,
        Run.Strong strong => strong.Text,
        Run.Link link => link.Target.AbsoluteUri.Length <= LongestAddress ? $"{link.Text}: {link.Target.AbsoluteUri}" : $"({link.Text}: link in the HTML part)",
        Run.Number number => $"{FigureWords.Format(number.Figure, number.Style).OneLine} [{number.MethodNumber}]",
        _ => throw new ArgumentOutOfRangeException(nameof(run), run, "Unknown kind of run."),
    };

    private void Card(Block.Card card, int indent)
    {
        text.Blank();
        var badge = card.Badge is { } state ? $"  [{state}]" : string.Empty;
        text.Wrapped(Words(card.Heading) + badge, indent);
        foreach (var block in card.Blocks) Write(block, indent + 3);
    }

    private void Table(Block.Table table, int indent)
    {
        text.Blank();
        text.Wrapped(table.Caption + ":", indent);
        var rows = table.Rows.Select(r => r.Select(Words).ToArray()).ToList();
        var widths = table.Columns.Select((c, i) => rows.Select(r => r[i].Length).Append(c.Heading.Length).Max()).ToArray();
        if (indent + widths.Sum() + (2 * (widths.Length - 1)) <= TextReport.Columns) Columns(table, rows, widths, indent);
        else Records(table, rows, indent);
        text.Blank();
    }

    private void Columns(Block.Table table, List<string[]> rows, int[] widths, int indent)
    {
        text.Exact(Row(table, [.. table.Columns.Select(c => c.Heading)], widths, indent));
        text.Exact(Row(table, [.. widths.Select(w => new string('-', w))], widths, indent));
        foreach (var row in rows) text.Exact(Row(table, row, widths, indent));
    }

    private static string Row(Block.Table table, string[] cells, int[] widths, int indent) =>
        new string(' ', indent) + string.Join("  ", cells.Select((c, i) =>
            table.Columns[i].IsNumeric ? Clean(c).PadLeft(widths[i]) : Clean(c).PadRight(widths[i])));

    private static string Clean(string cell) => string.Join(' ', TextLines.Words(cell));

    // Too wide for columns: each row as a short list.
    private void Records(Block.Table table, List<string[]> rows, int indent)
    {
        foreach (var row in rows)
        {
            text.Wrapped("* " + row[0], indent, hanging: 2);
            for (var i = 1; i < row.Length; i++)
                if (row[i].Length > 0) text.Wrapped($"{table.Columns[i].Heading}: {row[i]}", indent + 2, hanging: 2);
        }
    }
}
