using FleetTrend.Records.Texts;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Fonts;
using FleetTrend.Trends.Words;
using SkiaSharp;

namespace FleetTrend.Reports.Pdf;

/// <summary>Words set in one size: measured, wrapped and drawn.</summary>
/// <param name="size">Points.</param>
/// <param name="ink">Colour.</param>
internal sealed class PdfText(float size, SKColor ink)
{
    private static readonly SKColor LinkInk = SKColor.Parse("#0b5394");

    // By whether letters are strong; they live as long as the process.
    private readonly Dictionary<bool, SKFont> fonts = new() { [false] = new(ShippedFonts.Regular, size), [true] = new(ShippedFonts.Bold, size) };

    /// <summary>Points from one line to the next.</summary>
    public float Leading { get; } = size * 1.32f;

    /// <summary>Words of a line in order, each in the pieces in which it is set.</summary>
    public static IReadOnlyList<IReadOnlyList<PdfFragment>> Words(Line line, bool isStrong = false)
    {
        List<List<PdfFragment>> words = [];
        var isOpen = false;
        foreach (var run in line.Runs)
        {
            var (text, strong, target) = run switch
            {
                Run.Plain plain => (plain.Text, false, null),
                Run.Strong of => (of.Text, true, null),
                Run.Link link => (link.Text, false, link.Target),
                Run.Number number => (FigureWords.Format(number.Figure, number.Style).OneLine, false, null),
                _ => throw new ArgumentOutOfRangeException(nameof(line), run, "Unknown kind of run."),
            };
            var parts = ForeignText.OneLine(text).Split(' ');
            for (var i = 0; i < parts.Length; i++)
            {
                if (i > 0) isOpen = false;
                if (parts[i].Length == 0) continue;
                if (!isOpen) words.Add([]);
                words[^1].Add(new PdfFragment(parts[i], strong || isStrong, target));
                isOpen = true;
            }
        }

        return words;
    }

    /// <summary>Width of a word.</summary>
    public float Width(IReadOnlyList<PdfFragment> word) => word.Sum(f => FontOf(f).MeasureText(f.Text));

    /// <summary>Width of words on one line.</summary>
    public float WidthOf(IReadOnlyList<IReadOnlyList<PdfFragment>> words) => words.Sum(Width) + Math.Max(0, words.Count - 1) * Blank;

    /// <summary>Lines no wider than a width; a word that is wider is cut.</summary>
    public IReadOnlyList<IReadOnlyList<IReadOnlyList<PdfFragment>>> Wrap(IReadOnlyList<IReadOnlyList<PdfFragment>> words, float width)
    {
        List<List<IReadOnlyList<PdfFragment>>> lines = [[]];
        var used = 0f;
        foreach (var word in words.SelectMany(w => Width(w) <= width ? [w] : Cut(w, width)))
        {
            var needs = Width(word);
            if (lines[^1].Count > 0 && used + Blank + needs > width)
            {
                lines.Add([]);
                used = 0;
            }

            used += needs + (lines[^1].Count > 0 ? Blank : 0);
            lines[^1].Add(word);
        }

        return lines;
    }

    /// <summary>Draws one line.</summary>
    /// <param name="canvas">The page.</param>
    /// <param name="words">The line.</param>
    /// <param name="left">Its left edge.</param>
    /// <param name="top">Its upper edge.</param>
    /// <param name="right">Its right edge where it is set to the right; null where it is set to the left.</param>
    public void Draw(SKCanvas canvas, IReadOnlyList<IReadOnlyList<PdfFragment>> words, float left, float top, float? right = null)
    {
        using var paint = new SKPaint { Color = ink, IsAntialias = true };
        using var linkPaint = new SKPaint { Color = LinkInk, IsAntialias = true };
        var x = right is { } edge ? Math.Max(left, edge - WidthOf(words)) : left;
        foreach (var (i, word) in words.Index())
        {
            // Blanks are drawn, so that whoever takes the text out of the file finds words.
            if (i > 0)
            {
                canvas.DrawText(" ", x, top + size, SKTextAlign.Left, fonts[false], paint);
                x += Blank;
            }

            foreach (var fragment in word)
            {
                var width = FontOf(fragment).MeasureText(fragment.Text);
                canvas.DrawText(fragment.Text, x, top + size, SKTextAlign.Left, FontOf(fragment), fragment.Target is null ? paint : linkPaint);
                if (fragment.Target is { IsAbsoluteUri: true } target)
                    canvas.DrawUrlAnnotation(new SKRect(x, top, x + width, top + Leading), target.AbsoluteUri);
                x += width;
            }
        }
    }

    private float Blank => fonts[false].MeasureText(" ");

    private SKFont FontOf(PdfFragment fragment) => fonts[fragment.IsStrong];

    private IEnumerable<IReadOnlyList<PdfFragment>> Cut(IReadOnlyList<PdfFragment> word, float width)
    {
        foreach (var fragment in word)
        {
            var rest = fragment.Text;
            while (rest.Length > 0)
            {
                var length = rest.Length;
                while (length > 1 && FontOf(fragment).MeasureText(rest[..length]) > width) length--;
                if (length < rest.Length && char.IsHighSurrogate(rest[length - 1])) length = Math.Max(1, length - 1);
                yield return [fragment with { Text = rest[..length] }];
                rest = rest[length..];
            }
        }
    }
}
