using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Positions;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Cylinders and sides: what is called in the report, all of it on a page.</summary>
public sealed class PositionsSectionTests
{
    private const string Statement = "No. 3 had 24 of 54 cracks at welds of flange to stack, on 15 aircraft: 2.4 times the others (1.5 to 3.9). If the cylinders of an aircraft "
        + "were alike, a difference this large would come up about once in 250, all comparisons allowed for.";

    [Fact]
    public void The_report_has_what_is_called_and_a_link()
    {
        var section = Section([Trend(), Trend(called: false)])!;
        Assert.Equal([Statement], section.QuerySelectorAll("li").Select(l => l.TextContent));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("The counts behind it", "http://fleet.example:8080/positions"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact]
    public void Where_nothing_is_called_there_is_no_section()
    {
        Assert.Null(Section([]));
        Assert.Null(Section([Trend(called: false)]));
        Assert.Null(Section([Trend() with { TypeGroups = ["elsewhere"] }]));
    }

    [Fact]
    public void The_page_has_each_position_with_its_counts_and_verdict()
    {
        var page = Page(Snapshot() with { Positions = [Trend()] });
        Assert.Contains(PositionWords.Meaning, page.TextContent, StringComparison.Ordinal);
        Assert.Contains(Statement, page.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            ["No. 3", "24", "15", "12,000", "2.4 times (95 % interval 1.5 to 3.9)", "p = 0.0040", "more often than the others"],
            page.QuerySelectorAll("tbody tr")[2].Children.Select(c => c.TextContent));
        Assert.Contains("p: exact permutation of the positions within each aircraft (Pitman 1937), after Holm 1979.", page.TextContent, StringComparison.Ordinal);
        Assert.Contains("No. 3 had 24 of 54 cracks at welds of flange to stack, on 15 aircraft: no more often than chance allows.",
            Page(Snapshot() with { Positions = [Trend(called: false)] }).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_has_at_most_75_rows()
    {
        var page = Page(Snapshot() with { Positions = [.. Enumerable.Repeat(Trend(), 20)] });
        Assert.Equal(72, page.QuerySelectorAll("tbody tr").Length);
        Assert.Contains("2 more kinds of location and condition. ListPositions has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_finding_the_page_says_so() =>
        Assert.Contains("No finding is recorded at a cylinder or a side, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);

    private static PositionTrend Trend(bool called = true) => new()
    {
        TypeGroups = [Snapshot().Fleet[0].TypeGroup],
        Kind = "flange-weld",
        Title = "Weld of flange to stack",
        Condition = Condition.Crack,
        Sort = PositionSort.Cylinder,
        Aircraft = 30,
        Confidence = 0.95,
        Positions =
        [
            .. Enumerable.Range(1, 4).Select(i => new PositionLine
            {
                Name = $"{i}",
                Findings = i == 3 ? 24 : 10,
                ExposureHours = 12000,
                Aircraft = i == 3 ? 15 : 9,
                TimesOthers = i == 3 ? InventedFigures.OfLives(2.4, 1.5, 3.9, "", 54, 0) : InventedFigures.OfLives(0.7, 0.4, 1.2, "", 54, 0),
                PValue = i == 3 ? 0.001 : 0.5,
                AdjustedPValue = i == 3 && called ? 0.004 : 1,
                Finding = i == 3 && called ? PositionFinding.MoreOften : PositionFinding.NoneShown,
            }),
        ],
        WithFindings = [],
    };

    private static IElement? Section(IReadOnlyList<PositionTrend> trends)
    {
        var report = WeeklyReport.Compose(Snapshot() with { Positions = trends }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "positions") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(PositionsSection.Compose(snapshot))).Body!;
}
