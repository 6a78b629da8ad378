using FleetTrend.Reports.Blocks;
using SkiaSharp;

namespace FleetTrend.Reports.Pdf;

/// <summary>Blocks as pieces of a page.</summary>
/// <param name="left">Left edge of the text, in points.</param>
/// <param name="width">Its width, in points.</param>
internal sealed class PdfBlocks(float left, float width)
{
    private const float CellGap = 8;
    private const float Indent = 12;

    private static readonly SKColor Ink = SKColor.Parse("#1f2933");
    private static readonly SKColor Quiet = SKColor.Parse("#4a545e");
    private static readonly SKColor Rule = SKColor.Parse("#b8c0c8");
    private static readonly PdfText Title = new(15, Ink);
    private static readonly PdfText Heading = new(12, Ink);
    private static readonly PdfText Body = new(10, Ink);
    private static readonly PdfText Aside = new(8.5f, Quiet);
    private static readonly PdfText Cell = new(7.5f, Ink);

    /// <summary>The title of a page.</summary>
    public IEnumerable<PdfPiece> WriteTitle(string text) => Lines(Title, PdfText.Words(text, isStrong: true), left, width, 0, 4, keepsWithNext: true);

    /// <summary>The heading of a section; it never ends a page.</summary>
    public IEnumerable<PdfPiece> WriteHeading(string text) => Lines(Heading, PdfText.Words(text, isStrong: true), left, width, 9, 2, keepsWithNext: true);

    /// <summary>Small print.</summary>
    public IEnumerable<PdfPiece> WriteAside(Line line, bool isStrong = false) => Lines(Aside, PdfText.Words(line, isStrong), left, width, 1, 2);

    /// <summary>A block; a table with all of its rows.</summary>
    public IEnumerable<PdfPiece> Write(Block block) => block switch
    {
        Block.Paragraph { IsAside: true } aside => WriteAside(aside.Line),
        Block.Paragraph paragraph => Lines(Body, PdfText.Words(paragraph.Line), left, width, 2, 2),
        Block.SubHeading heading => Lines(Body, PdfText.Words(heading.Text, isStrong: true), left, width, 5, 1, keepsWithNext: true),
        Block.Bullets bullets => bullets.Items.SelectMany(Bullet),
        Block.Card card =>
            [.. Lines(Body, PdfText.Words(card.Heading, isStrong: true), left, width, 4, 1, keepsWithNext: true), .. card.Blocks.SelectMany(Write)],
        Block.Table table => [.. WriteHead(table), .. WriteRows(table)],
        Block.Picture picture => WriteAside(picture.AltText),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown kind of block."),
    };

    /// <summary>Caption and headings of a table; they never end a page.</summary>
    public IEnumerable<PdfPiece> WriteHead(Block.Table table)
    {
        var widths = Widths(table);
        return
        [
            .. Lines(Aside, PdfText.Words(table.Caption), left, width, 3, 2, keepsWithNext: true),
            Row(table, [.. table.Columns.Select(c => PdfText.Words(c.Heading, isStrong: true))], widths, keepsWithNext: true),
        ];
    }

    /// <summary>A piece per row of a table.</summary>
    public IEnumerable<PdfPiece> WriteRows(Block.Table table)
    {
        var widths = Widths(table);
        return table.Rows.Select(r => Row(table, [.. r.Select(c => PdfText.Words(c))], widths, keepsWithNext: false));
    }

    private static IEnumerable<PdfPiece> Lines(
        PdfText text, IReadOnlyList<IReadOnlyList<PdfFragment>> words, float left, float width, float above, float below, bool keepsWithNext = false)
    {
        var lines = text.Wrap(words, width);
        return lines.Select((line, i) => new PdfPiece(
            text.Leading + (i == 0 ? above : 0) + (i == lines.Count - 1 ? below : 0),
            (canvas, top) => text.Draw(canvas, line, left, top + (i == 0 ? above : 0)),
            keepsWithNext || (i == 0 && lines.Count > 1))); // no first line alone at the foot
    }

    private IEnumerable<PdfPiece> Bullet(Line item) =>
        Lines(Body, PdfText.Words(item), left + Indent, width - Indent, 1, 1).Select((piece, i) => i > 0 ? piece : piece with
        {
            Draw = (canvas, top) =>
            {
                Body.Draw(canvas, PdfText.Words("•"), left + 2, top + 1);
                piece.Draw(canvas, top);
            },
        });

    private PdfPiece Row(Block.Table table, IReadOnlyList<IReadOnlyList<IReadOnlyList<PdfFragment>>> cells, float[] widths, bool keepsWithNext)
    {
        var wrapped = cells.Select((c, i) => Cell.Wrap(c, widths[i])).ToList();
        var height = wrapped.Max(c => c.Count) * Cell.Leading + 3;
        return new PdfPiece(height, Draw, keepsWithNext);

        void Draw(SKCanvas canvas, float top)
        {
            var x = left;
            for (var i = 0; i < wrapped.Count; i++)
            {
                for (var line = 0; line < wrapped[i].Count; line++)
                    Cell.Draw(canvas, wrapped[i][line], x, top + 1 + line * Cell.Leading, table.Columns[i].IsNumeric ? x + widths[i] : null);
                x += widths[i] + CellGap;
            }

            using var rule = new SKPaint { Color = Rule, StrokeWidth = keepsWithNext ? 0.9f : 0.4f, IsStroke = true };
            canvas.DrawLine(left, top + height - 0.5f, left + width, top + height - 0.5f, rule);
        }
    }

    /// <summary>Each column at least as wide as its longest word; what is left goes where lines would break.</summary>
    private float[] Widths(Block.Table table)
    {
        var columns = table.Columns.Count;
        var (least, whole) = (new float[columns], new float[columns]);
        for (var i = 0; i < columns; i++)
        {
            List<IReadOnlyList<IReadOnlyList<PdfFragment>>> cells =
                [PdfText.Words(table.Columns[i].Heading, isStrong: true), .. table.Rows.Select(r => PdfText.Words(r[i]))];
            least[i] = cells.Max(c => c.Count == 0 ? 0 : c.Max(Cell.Width)) + 1;
            whole[i] = cells.Max(Cell.WidthOf) + 1;
        }

        var space = width - (columns - 1) * CellGap;
        if (least.Sum() >= space)
            return [.. least.Select(l => l * space / least.Sum())];
        var wanted = whole.Zip(least, (w, l) => w - l).Sum();
        var share = wanted <= 0 ? 0 : Math.Min(1, (space - least.Sum()) / wanted);
        return [.. whole.Zip(least, (w, l) => l + share * (w - l))];
    }
}
