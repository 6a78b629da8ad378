using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Shrouds;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Stop-drilled shrouds and clamp bolts: what stands out in the report, all of it on a page.</summary>
public sealed class ShroudsSectionTests
{
    [Fact]
    public void The_report_has_shrouds_with_three_stop_drills_or_more_and_counts_bolts()
    {
        var section = Section(Trend(), ReportScope.WholeFleet)!;
        Assert.Equal(
            ["ZZ-A01, shroud: 4 stop drills, the first 310 h ago on 1 Mar 2026, and 1 crack open.", "1 clamp bolt has something open: renew while a wrench still fits."],
            section.QuerySelectorAll("li").Select(l => l.TextContent));
        Assert.Equal("http://fleet.example:8080/shrouds", section.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void Where_nothing_stands_out_there_is_no_section()
    {
        Assert.Null(Section(Trend() with { StopDrilled = [Shroud(2)], BadBolts = [] }, ReportScope.WholeFleet));
        Assert.Null(Section(Trend(), new ReportScope(Away)));
    }

    [Fact]
    public void The_page_has_them_all()
    {
        var page = Page(Snapshot() with { Shrouds = [Trend()] });
        Assert.Contains(ShroudWords.Meaning, page.TextContent, StringComparison.Ordinal);
        Assert.Contains("Of 9 shrouds with stop drills 4 were renewed, 210 to 900 h after the first one, with 3.5 stop drills on average.",
            page.TextContent, StringComparison.Ordinal);
        Assert.Contains("Of 21 clamp bolts: 1 eroded, 20 good at the last look.", page.TextContent, StringComparison.Ordinal);
        var rows = page.QuerySelectorAll("tbody tr").Select(r => r.Children.Select(c => c.TextContent).ToList()).ToList();
        Assert.Equal(["500 h", "2", "4", "30 % (95 % interval 10 % to 60 %)"], rows[0]);
        Assert.Equal(["Good at the last look", "20", "10", "340"], rows[1]);
        Assert.Equal(["Eroded", "1", "1", "not known"], rows[2]);
        Assert.Equal(["ZZ-A01", "Shroud", "4", "1 Mar 2026", "310", "1"], rows[3]);
        Assert.Equal(["ZZ-A01", "Left clamp bolt", "Eroded", "1 Oct 2026", "62", "not known"], rows[^1]);
    }

    [Fact]
    public void A_page_lists_at_most_35_of_each()
    {
        var page = Page(Snapshot() with { Shrouds = [Trend() with { StopDrilled = [.. Enumerable.Repeat(Shroud(4), 40)] }] });
        Assert.Equal(1 + 2 + 35 + 1, page.QuerySelectorAll("tbody tr").Length);
        Assert.Contains("5 more. ListShrouds has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void With_neither_the_page_says_so() =>
        Assert.Contains("No stop drill of a heat shroud is recorded, and no layout has a clamp bolt, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);

    private static ShroudTrend Trend() => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Shrouds = 9,
        Renewed = 4,
        StopDrillsAtRenewal = 3.5,
        FewestHours = 210,
        MostHours = 900,
        Shares = [new ShareRenewed(500, 2, 4, InventedFigures.OfLives(0.3, 0.1, 0.6, "", 4, 9))],
        StopDrilled = [Shroud(4), Shroud(2)],
        Bolts = [new HexCount(HexState.Good, 20, 10, 340), new HexCount(HexState.Eroded, 1, 1, null)],
        BadBolts =
        [
            new BadBolt
            {
                Registration = "ZZ-A01", Base = Home, Location = "exhaust/left/clamp-bolt", State = HexState.Eroded, FoundDate = new DateOnly(2026, 10, 1), HoursSince = 62, Evidence = [],
            },
        ],
    };

    private static StopDrilledShroud Shroud(int drills) => new()
    {
        Registration = "ZZ-A01",
        Base = Home,
        Shroud = "exhaust/shroud",
        StopDrills = drills,
        OpenCracks = 1,
        FirstDate = new DateOnly(2026, 3, 1),
        Hours = 310,
        IsRenewed = false,
        Evidence = [],
    };

    private static IElement? Section(ShroudTrend trend, ReportScope scope)
    {
        var report = WeeklyReport.Compose(Snapshot() with { Shrouds = [trend] }, WeekBefore(), Inputs(scope));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "shrouds") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(ShroudsSection.Compose(snapshot))).Body!;
}
