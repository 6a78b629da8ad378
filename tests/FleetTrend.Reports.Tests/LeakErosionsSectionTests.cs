using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.LeakErosions;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Leaks that are open, with the chance of an eroded face: a few in the report, all of them on a page.</summary>
public sealed class LeakErosionsSectionTests
{
    private const string Line = "ZZ-A01, cyl 3 gasket: first seen 62 h ago; if it waits for its next look, in 38 h, its port face is eroded by then with a chance of 12 % (95 % "
        + "interval 4.0 % to 30 %).";

    [Fact]
    public void The_report_has_three_open_leaks_and_a_link()
    {
        var section = Section([.. Enumerable.Range(1, 5).Select(_ => Open())], ReportScope.WholeFleet)!;
        Assert.Equal([Line, Line, Line], section.QuerySelectorAll("li").Select(l => l.TextContent));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("2 more, and what became of earlier leaks", "http://fleet.example:8080/leaks"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact]
    public void Where_no_leak_is_open_in_its_scope_there_is_no_section()
    {
        Assert.Null(Section([], ReportScope.WholeFleet));
        Assert.Null(Section([Open() with { Base = Home }], new ReportScope(Away)));
        Assert.NotNull(Section([Open() with { Base = Away }], new ReportScope(Away)));
    }

    [Fact]
    public void The_page_says_what_became_of_leaks_and_what_is_open()
    {
        var page = Page(Snapshot() with { LeakErosions = [Erosion([Open(), Open() with { IsEroded = true, Chance = null }])] });
        Assert.Contains(LeakErosionWords.Meaning, page.TextContent, StringComparison.Ordinal);
        Assert.Contains(
            "Of 23 leaks at exhaust ports on 9 aircraft 4 had eroded the port face when first seen; of the 19 others 3 did while they were left (2 whose face nobody looked at "
            + "meanwhile).", page.TextContent, StringComparison.Ordinal);
        Assert.Equal(["100 h", "2", "11", "14 % (95 % interval 5.0 % to 35 %)"], page.QuerySelectorAll("tbody tr")[0].Children.Select(c => c.TextContent));
        Assert.Equal([Line, "ZZ-A01, cyl 3 gasket: first seen 62 h ago; its port face is eroded already."], page.QuerySelectorAll("li").Select(l => l.TextContent));
    }

    [Fact]
    public void A_page_lists_at_most_75_open_leaks()
    {
        var page = Page(Snapshot() with { LeakErosions = [Erosion([.. Enumerable.Repeat(Open(), 80)])] });
        Assert.Equal(75, page.QuerySelectorAll("li").Length);
        Assert.Contains("5 more. ListLeakErosions has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_is_no_case_the_page_says_so()
    {
        Assert.Contains("No leak at an exhaust port is recorded, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);
        Assert.Contains("we have no case yet", Page(Snapshot()).TextContent, StringComparison.Ordinal);
        var page = Page(Snapshot() with { LeakErosions = [Erosion([]) with { ErodedAtFirst = 0, Eroded = 0, NotLookedAt = 0 }] });
        Assert.Contains(
            "none had eroded the port face when first seen. We have no case yet of a face that eroded while a leak was left, in 23 leaks.", page.TextContent,
            StringComparison.Ordinal);
        Assert.Contains("No leak at an exhaust port is open now.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact] // A look that is past has no hours to wait.
    public void A_look_that_is_past_is_due_now() =>
        Assert.Contains("if it waits for its next look, due now, its port face", LeakErosionWords.Statement(Open() with { HoursLeft = 120, NextLookHours = 120 }), StringComparison.Ordinal);

    private static LeakErosion Erosion(IReadOnlyList<OpenLeak> open) => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Leaks = 23,
        Aircraft = 9,
        ErodedAtFirst = 4,
        Eroded = 3,
        NotLookedAt = 2,
        Shares = [new ShareEroded(100, 2, 11, InventedFigures.OfLives(0.14, 0.05, 0.35, "", 3, 17))],
        Open = open,
    };

    private static OpenLeak Open() => new()
    {
        Registration = "ZZ-A01",
        Base = Home,
        Location = "exhaust/cyl-3/gasket",
        Face = "exhaust/cyl-3/port-face",
        FoundDate = new DateOnly(2026, 10, 1),
        HoursLeft = 62,
        GoodHours = 0,
        NextLookHours = 100,
        IsEroded = false,
        Chance = InventedFigures.OfLives(0.12, 0.04, 0.3, "", 3, 17),
        Evidence = [],
    };

    private static IElement? Section(IReadOnlyList<OpenLeak> open, ReportScope scope)
    {
        var report = WeeklyReport.Compose(Snapshot() with { LeakErosions = [Erosion(open)] }, WeekBefore(), Inputs(scope));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "leak-erosions") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(LeakErosionsSection.Compose(snapshot))).Body!;
}
