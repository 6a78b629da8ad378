using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Pdf;
using FleetTrend.Reports.Weekly;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>The PDF for the wall, read by PdfPig, a PDF library that had no part in making it.</summary>
public sealed class ReportPdfTests
{
    [Theory]
    [InlineData(null)]
    [InlineData(Home)]
    public void Two_pages_of_A4_say_what_the_mail_says_and_the_tables_behind_it(string? atBase)
    {
        var report = Compose(atBase is null ? ReportScope.WholeFleet : new ReportScope(atBase));
        using var file = Open(report.Document);
        Assert.Equal(2, file.NumberOfPages);
        Assert.All(file.GetPages(), page => Assert.Equal(PageSize.A4, page.Size));
        var first = Words(file.GetPage(1));
        Assert.All(report.Document.Brief, s => Assert.Contains(s.Heading, first, StringComparison.Ordinal));
        foreach (var line in report.Document.Brief.SelectMany(s => s.Blocks).OfType<Block.Bullets>().SelectMany(b => b.Items))
            Assert.Contains(Text(line), first, StringComparison.Ordinal);
        var second = Words(file.GetPage(2));
        var lives = report.Document.Sections.Single(s => s.Name == "part-lives");
        Assert.Contains(lives.Heading, second, StringComparison.Ordinal);
        Assert.Contains("How each number is worked out stands in the report", second, StringComparison.Ordinal);
        Assert.Contains(Text(lives.Blocks.OfType<Block.Table>().First().Rows[0][0]), second, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_page_has_title_notice_caution_and_its_number()
    {
        var document = Compose(ReportScope.WholeFleet).Document with { Notice = "Synthetic data." };
        using var file = Open(document);
        Assert.All(file.GetPages(), page =>
        {
            Assert.StartsWith($"{document.Title} Synthetic data.", Words(page), StringComparison.Ordinal);
            Assert.Contains(Cautions.Brief, Words(page), StringComparison.Ordinal);
            Assert.EndsWith($"Page {page.Number} of 2", Words(page), StringComparison.Ordinal);
        });
    }

    [Fact] // Fonts go with the file, so that it prints the same everywhere; letters outside it would be boxes.
    public void Fonts_are_embedded_and_nothing_leaves_the_page()
    {
        using var file = Open(Compose(ReportScope.WholeFleet).Document);
        Assert.All(file.GetPages().SelectMany(p => p.Letters), letter =>
        {
            Assert.Contains("DejaVuSans", letter.FontName, StringComparison.Ordinal);
            Assert.InRange(letter.BoundingBox.Left, 41, 595 - 41);
            Assert.InRange(letter.BoundingBox.Right, 41, 595 - 41);
            Assert.InRange(letter.BoundingBox.Bottom, 20, 842 - 40);
        });
    }

    [Fact]
    public void Links_lead_to_the_pages()
    {
        var document = Compose(ReportScope.WholeFleet).Document;
        using var file = Open(document);
        var targets = file.GetPage(1).GetHyperlinks().Select(l => l.Uri).ToList();
        var meant = document.Brief.SelectMany(s => s.Blocks).OfType<Block.Bullets>().SelectMany(b => b.Items).SelectMany(i => i.Runs).OfType<Run.Link>();
        Assert.All(meant, link => Assert.Contains(link.Target.AbsoluteUri, targets));
    }

    [Fact]
    public void The_same_report_gives_the_same_bytes() =>
        Assert.Equal(
            ReportPdf.Render(Compose(ReportScope.WholeFleet).Document, Snapshot().AsOf),
            ReportPdf.Render(Compose(ReportScope.WholeFleet).Document, Snapshot().AsOf));

    [Fact] // By hand: a brief of 200 paragraphs is longer than two pages; what does not fit is said.
    public void What_does_not_fit_on_two_pages_is_said()
    {
        var document = Compose(ReportScope.WholeFleet).Document;
        var longest = new ReportSection("brief-open", "Open now", [.. Enumerable.Range(1, 200).Select(i => new Block.Paragraph($"Finding {i} is open."))]);
        using var file = Open(document with { Brief = [longest] });
        Assert.Equal(ReportPdf.MostPages, file.NumberOfPages);
        Assert.Contains("the whole report is on the pages", Words(file.GetPage(2)), StringComparison.Ordinal);
    }

    [Fact] // A word wider than the page, as an address or a part number may be.
    public void A_word_wider_than_the_page_is_cut()
    {
        var document = Compose(ReportScope.WholeFleet).Document;
        using var file = Open(document with { Brief = [new("brief-open", "Open now", [new Block.Paragraph(new string('Q', 300))])] });
        Assert.Equal(300, file.GetPage(1).Letters.Count(l => l.Value == "Q"));
        Assert.All(file.GetPage(1).Letters, l => Assert.InRange(l.BoundingBox.Right, 0, 595 - 41));
    }

    [Fact] // Nothing to say is one page.
    public void A_report_without_tables_has_one_page()
    {
        var document = Compose(ReportScope.WholeFleet).Document;
        using var file = Open(document with { Sections = [] });
        Assert.Equal(1, file.NumberOfPages);
    }

    private static WeeklyReport Compose(ReportScope scope) => WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(scope));

    private static PdfDocument Open(ReportDocument document) => PdfDocument.Open(ReportPdf.Render(document, Snapshot().AsOf));

    private static string Words(Page page) =>
        string.Join(' ', ContentOrderTextExtractor.GetText(page).Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    private static string Text(Line line) => string.Join(' ', string.Concat(line.Runs.Select(r => r switch
    {
        Run.Plain plain => plain.Text,
        Run.Strong strong => strong.Text,
        Run.Link link => link.Text,
        _ => throw new InvalidOperationException("A brief has words and links alone."),
    })).Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
