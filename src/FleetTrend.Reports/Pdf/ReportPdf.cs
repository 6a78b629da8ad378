using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using SkiaSharp;

namespace FleetTrend.Reports.Pdf;

/// <summary>
/// A report for the wall: at most two pages of A4. The first says what the mail says; the second has the tables behind it, as many as fit.
/// </summary>
public static class ReportPdf
{
    /// <summary>The most pages that one has.</summary>
    public const int MostPages = 2;

    private const float PageWidth = 595;
    private const float PageHeight = 842;
    private const float Margin = 42;
    private const float FootHeight = 46;
    private const int MostRows = 5;
    private const int LeastRows = 2;

    // In the order of the director's questions; a section that has no table is not there.
    private static readonly string[] OnTheSecondPage =
        ["part-lives", "rates", "repeats", "failure-chances", "effects", "fleet"];

    /// <summary>Draws a report. The same report gives the same bytes.</summary>
    /// <param name="report">The report.</param>
    /// <param name="asOf">Its as-of moment, which the file carries as its date.</param>
    /// <returns>The file.</returns>
    public static byte[] Render(ReportDocument report, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(report);
        var blocks = new PdfBlocks(Margin, PageWidth - 2 * Margin);
        List<PdfPage> pages = [New(report, blocks), New(report, blocks)];
        var said = report.ForMail().Sections.SelectMany(s => blocks.WriteHeading(s.Heading).Concat(s.Blocks.SelectMany(blocks.Write)));
        var rest = pages[0].Fill([.. said]);
        if (pages[1].Fill(rest).Count > 0)
            pages[1].Add(Only(blocks, "More than two pages hold: the whole report is on the pages."));
        var hasTables = FillWithTables(pages[1], blocks, report);
        if (rest.Count == 0 && !hasTables) pages.RemoveAt(1);
        return Write(report, asOf, pages, blocks);
    }

    private static PdfPage New(ReportDocument report, PdfBlocks blocks)
    {
        var page = new PdfPage(PageHeight - 2 * Margin - FootHeight);
        foreach (var piece in blocks.WriteTitle(report.Title)) page.Add(piece);
        if (report.Notice is { } notice)
            foreach (var piece in blocks.WriteAside(notice, isStrong: true)) page.Add(piece);
        return page;
    }

    private static bool FillWithTables(PdfPage page, PdfBlocks blocks, ReportDocument report)
    {
        List<string> missing = [];
        var isAny = false;
        foreach (var section in OnTheSecondPage.Select(n => report.Sections.FirstOrDefault(s => s.Name == n)).OfType<ReportSection>())
        {
            if (report.Brief.Count == 0 || section.Blocks.OfType<Block.Table>().FirstOrDefault(t => t.Rows.Count > 0) is not { } table) continue;
            List<PdfPiece> head = [.. blocks.WriteHeading(section.Heading), .. blocks.WriteHead(table)];
            List<PdfPiece> rows = [.. blocks.WriteRows(table).Take(MostRows)];
            var more = Only(blocks, "And more");
            var room = page.Left - 2 * more.Height - head.Sum(p => p.Height);
            var fitting = rows.TakeWhile(r => (room -= r.Height) >= 0).Count();
            if (fitting < Math.Min(LeastRows, rows.Count))
            {
                missing.Add(section.Heading);
                continue;
            }

            isAny = true;
            foreach (var piece in head.Concat(rows.Take(fitting))) page.Add(piece);
            if (table.Rows.Count > fitting)
                page.Add(Only(blocks, $"{NumberWords.Count(table.Rows.Count - fitting, "more row", "more rows")} in the report."));
        }

        var methods = Only(blocks, "How each number is worked out stands in the report on the pages.");
        if (isAny && methods.Height <= page.Left)
            page.Add(methods);
        if (missing.Count > 0)
        {
            foreach (var piece in blocks.WriteAside($"No room here for: {string.Join("; ", missing)}. They stand in the report on the pages.").Where(p => p.Height <= page.Left))
                page.Add(piece);
        }

        return isAny;
    }

    private static PdfPiece Only(PdfBlocks blocks, string text) => blocks.WriteAside(text).First();

    private static byte[] Write(ReportDocument report, DateTimeOffset asOf, List<PdfPage> pages, PdfBlocks blocks)
    {
        using var stream = new MemoryStream();
        var about = new SKDocumentPdfMetadata(300, 90)
        {
            Title = report.Title,
            Creator = "FleetTrend",
            Creation = asOf.UtcDateTime,
            Modified = asOf.UtcDateTime,
        };
        using (var file = SKDocument.CreatePdf(stream, about))
        {
            for (var i = 0; i < pages.Count; i++)
            {
                var canvas = file.BeginPage(PageWidth, PageHeight);
                pages[i].Draw(canvas, Margin);
                var top = PageHeight - Margin - FootHeight + 6;
                var origin = string.Join(" · ", report.Origin.Take(3).Select(o => $"{o.Key}: {o.Value}"));
                foreach (var piece in blocks.WriteAside(report.Caution).Concat(blocks.WriteAside($"{origin} · Page {i + 1} of {pages.Count}")))
                {
                    piece.Draw(canvas, top);
                    top += piece.Height;
                }

                file.EndPage();
            }

            file.Close();
        }

        return stream.ToArray();
    }
}
