using SkiaSharp;

namespace FleetTrend.Reports.Pdf;

/// <summary>What stands on one page, from above: pieces, as long as they fit.</summary>
/// <param name="height">Points that there are.</param>
internal sealed class PdfPage(float height)
{
    private readonly List<PdfPiece> pieces = [];

    /// <summary>Points that are left.</summary>
    public float Left { get; private set; } = height;

    /// <summary>Puts a piece on the page, whether or not there is room.</summary>
    public void Add(PdfPiece piece)
    {
        pieces.Add(piece);
        Left -= piece.Height;
    }

    /// <summary>Puts pieces on the page until one does not fit, and gives back the rest. A heading goes with what it heads.</summary>
    public IReadOnlyList<PdfPiece> Fill(IReadOnlyList<PdfPiece> all)
    {
        for (var i = 0; i < all.Count;)
        {
            var end = i + 1;
            while (end < all.Count && all[end - 1].KeepsWithNext) end++;
            if (all.Skip(i).Take(end - i).Sum(p => p.Height) > Left) return [.. all.Skip(i)];
            for (; i < end; i++) Add(all[i]);
        }

        return [];
    }

    /// <summary>Draws the page.</summary>
    public void Draw(SKCanvas canvas, float top)
    {
        foreach (var piece in pieces)
        {
            piece.Draw(canvas, top);
            top += piece.Height;
        }
    }
}
