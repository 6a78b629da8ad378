using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.PartNumbers;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Part numbers beside each other: what is called in the mail, all of them with their counts on a page.</summary>
public sealed class PartNumbersSectionTests
{
    private const string Verdict =
        "Of 40 exhaust gaskets with part number G-1 12 failed; of 30 with G-2 4 failed. G-2 lasts about 1.8 times as long as G-1. If they lasted alike, a difference "
        + "this large would come up about once in 250, all comparisons allowed for.";

    [Fact]
    public void The_mail_has_what_is_called_and_a_link()
    {
        var section = Section([Trend(), Trend(), Trend(), Trend()])!;
        Assert.Equal([Verdict, Verdict, Verdict], section.QuerySelectorAll("li").Select(l => l.TextContent));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("1 more, with counts", "http://fleet.example:8080/part-numbers"), (link.TextContent, link.GetAttribute("href")));
        Assert.Null(Section([Trend(PartNumberFinding.NoneShown)]));
        Assert.Null(Section([Trend() with { TypeGroup = "another" }]));
    }

    [Fact]
    public void The_page_has_counts_and_comparisons()
    {
        var page = Page(Snapshot() with { PartNumbers = [Trend()] });
        Assert.Contains(PartNumberWords.Meaning, page.TextContent, StringComparison.Ordinal);
        Assert.Contains(Verdict, page.TextContent, StringComparison.Ordinal);
        var tables = page.QuerySelectorAll("table");
        Assert.Equal(["G-1", "40", "12", "9", "0.90 (95 % interval 0.50 to 1.6)", "3.0 % (95 % interval 1.0 % to 8.0 %)", "2"], Cells(tables[0], 0));
        Assert.Equal(
            ["G-2 lasts about 1.8 times as long as G-1", "1.8 times (95 % interval 1.2 to 2.6)", "p = 0.0040", "G-2 lasts longer"], Cells(tables[1], 0));
        Assert.Contains("p after Holm 1979", page.TextContent, StringComparison.Ordinal);
    }

    [Fact] // One line for all of them: there is nothing to compare.
    public void Kinds_with_one_number_share_one_line()
    {
        var alone = Trend() with { Numbers = [Number("G-1", 40, 12, 9)], Comparisons = [] };
        var page = Page(Snapshot() with { PartNumbers = [alone, alone] });
        Assert.Empty(page.QuerySelectorAll("table"));
        Assert.Contains(
            $"so that there is nothing to compare: exhaust gasket of {alone.TypeGroup} (G-1); exhaust gasket of {alone.TypeGroup} (G-1).", page.TextContent,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_number_is_on_record_the_page_says_what_would_tell() =>
        Assert.Contains("No installation on record tells a part number, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);

    internal static PartNumberTrend Trend(PartNumberFinding finding = PartNumberFinding.Better) => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Kind = "gasket",
        Title = "Exhaust gasket",
        NotTold = 0,
        Numbers = [Number("G-1", 40, 12, 9), Number("G-2", 30, 4, 8)],
        Comparisons =
        [
            new PartNumberComparison
            {
                Better = "G-2",
                Worse = "G-1",
                Measure = PartNumberMeasure.Life,
                Hours = 0,
                Times = InventedFigures.OfLives(1.8, 1.2, 2.6, "", 16, 70),
                PValue = 0.002,
                AdjustedPValue = 0.004,
                Finding = finding,
            },
        ],
    };

    private static PartNumberLives Number(string number, int lives, int failures, int aircraft) => new()
    {
        PartNumber = number,
        Lives = lives,
        Failures = failures,
        Aircraft = aircraft,
        NotCounted = 2,
        FailureRate = InventedFigures.Rate(12, 13_000, 0.9, 0.5, 1.6),
        EarlyFailures = InventedFigures.OfLives(0.03, 0.01, 0.08, "", failures, lives),
    };

    private static IElement? Section(IEnumerable<PartNumberTrend> trends)
    {
        var report = WeeklyReport.Compose(Snapshot() with { PartNumbers = [.. trends] }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "part-numbers") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) =>
        new HtmlParser().ParseDocument(ReportHtml.Render(PartNumbersSection.Compose(snapshot))).Body!;

    private static string[] Cells(IElement table, int row) =>
        [.. table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent)];
}
