using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Growth;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Which way kinds of place go: those that move in the report, every kind on a page.</summary>
public sealed class GrowthSectionTests
{
    private const string Line = "Flange welds, trainer, cracks: getting worse; twice as often now as two years ago (1.3 to 3.1), by 45 cracks on 12 aircraft in three years. Over flight "
        + "hours no trend is shown (growth exponent 1.2, 0.80 to 1.6). If nothing had changed, a trend this strong would come up about once in 120, all kinds and both clocks allowed for.";

    [Fact]
    public void The_report_has_three_kinds_that_move_and_a_link()
    {
        var section = Section([.. Enumerable.Range(1, 5).Select(_ => Trend(GrowthFinding.Worse)), Trend(GrowthFinding.NoneShown)])!;
        Assert.Equal([Line, Line, Line], section.QuerySelectorAll("li")
            .Select(l => l.TextContent.Replace(Snapshot().Fleet[0].TypeGroup, "trainer", StringComparison.Ordinal)));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("2 more, and all other kinds", "http://fleet.example:8080/growth"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact]
    public void Where_nothing_moves_there_is_no_section()
    {
        Assert.Null(Section([]));
        Assert.Null(Section([Trend(GrowthFinding.NoneShown)]));
        Assert.Null(Section([Trend(GrowthFinding.Worse) with { TypeGroup = "elsewhere" }]));
    }

    [Fact]
    public void The_page_has_every_kind_and_what_it_means()
    {
        var few = Trend(GrowthFinding.NotTold) with
        {
            Calendar = new GrowthClock
            {
                Events = 2,
                Aircraft = 1,
                Growth = InventedFigures.OfLives(1, 1, 1, "", 2, 1) with { Value = null, Lower = null, Upper = null, NotEnoughData = "not enough data: 2 findings on 1 aircraft" },
            },
            Hours = null,
        };
        var page = Page(Snapshot() with { Growth = [Trend(GrowthFinding.Worse), few] });
        Assert.Contains(GrowthWords.Meaning, page.TextContent, StringComparison.Ordinal);
        var cells = page.QuerySelectorAll("tbody tr")[0].Children.Select(c => c.TextContent).ToList();
        Assert.Equal(["45", "12", "2.0 (95 % interval 1.3 to 3.1)", "p = 0.0080", "getting worse", "1.2 (95 % interval 0.80 to 1.6)", "p = 0.90", "no trend shown"], cells[1..]);
        Assert.Equal(["2", "1", "not enough data: 2 findings on 1 aircraft (no interval)", "", "too few to tell", "parts are renewed", "", ""],
            page.QuerySelectorAll("tbody tr")[1].Children.Skip(1).Select(c => c.TextContent));
        Assert.Single(page.QuerySelectorAll("li"));
        Assert.Contains("Nothing has been found in watched hours, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);
        Assert.Contains("No kind of location has findings enough to tell a trend.", Page(Snapshot() with { Growth = [few] }).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_lists_at_most_75_kinds()
    {
        var page = Page(Snapshot() with { Growth = [.. Enumerable.Repeat(Trend(GrowthFinding.Worse), 80)] });
        Assert.Equal(75, page.QuerySelectorAll("tbody tr").Length);
        Assert.Contains("5 more. ListGrowth has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    private static GrowthTrend Trend(GrowthFinding finding) => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Kind = "flange-weld",
        Title = "Flange weld",
        Condition = Condition.Crack,
        Calendar = Clock(finding, 2, 1.3, 3.1, 0.008),
        Hours = Clock(GrowthFinding.NoneShown, 1.2, 0.8, 1.6, 0.9),
    };

    private static GrowthClock Clock(GrowthFinding finding, double value, double lower, double upper, double p) => new()
    {
        Events = 45,
        Aircraft = 12,
        Growth = InventedFigures.OfLives(value, lower, upper, "", 45, 12),
        PValue = p / 2,
        AdjustedPValue = p,
        Finding = finding,
    };

    private static IElement? Section(IReadOnlyList<GrowthTrend> trends)
    {
        var report = WeeklyReport.Compose(Snapshot() with { Growth = trends }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "growth") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(GrowthSection.Compose(snapshot))).Body!;
}
