using SkiaSharp;

namespace FleetTrend.Reports.Pdf;

/// <summary>Something that stands on a page from its left to its right edge and is never cut.</summary>
/// <param name="Height">Points that it takes.</param>
/// <param name="Draw">Draws it; told its upper edge.</param>
/// <param name="KeepsWithNext">Whether it may not end a page: a heading is nothing without what it heads.</param>
internal sealed record PdfPiece(float Height, Action<SKCanvas, float> Draw, bool KeepsWithNext = false);
