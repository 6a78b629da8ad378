using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Sources;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Trends;
using FleetTrend.Trends.Spares;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What to order: what falls short in the mail, what every base will need on a page.</summary>
public sealed class SparesSectionTests
{
    [Fact] // Six at Quillmoor fall short, of which five are named; Sandvale has enough.
    public void The_mail_has_five_lines_and_a_link()
    {
        var trends = Snapshot() with { Spares = [.. Enumerable.Range(1, 6).Select(i => Need($"G-{i}", onHand: 1)), Need("G-7", Away, onHand: 50)] };
        var section = Section(trends, ReportScope.WholeFleet)!;
        Assert.Equal("What to order", section.QuerySelector("h2")!.TextContent);
        var items = section.QuerySelectorAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(5, items.Count);
        // Half and half of 2 and 5 within 30 days: 5 cover them with 95 %, and one is there.
        Assert.Equal(
            "Quillmoor is short by 4 exhaust gaskets (G-1) within 30 days: 1 on hand, 5 would be enough with a chance of 95 %; delivery takes 10 days: order now.", items[0]);
        var link = section.QuerySelector("a")!;
        Assert.Equal(("1 more, and what every base will need", "http://fleet.example:8080/spares"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact]
    public void Where_nothing_falls_short_there_is_no_section()
    {
        Assert.Null(Section(Snapshot(), ReportScope.WholeFleet));
        Assert.Null(Section(Snapshot() with { Spares = [Need("G-1", onHand: 50), Need("G-2", onHand: null)] }, ReportScope.WholeFleet));
        Assert.Null(Section(Snapshot() with { Spares = [Need("G-1", onHand: 1)] }, new ReportScope(Away)));
    }

    [Fact]
    public void The_page_has_every_base_and_part()
    {
        var page = Page(Snapshot() with
        {
            Spares = [Need("G-1", onHand: 1), Need(null, Away, onHand: null) with { AgeUnknown = 3, Waiting = 2, PartsPerFailure = 1.5 }, Untold()],
        });
        var table = page.QuerySelector("table")!;
        Assert.Equal(["Quillmoor", "Exhaust gaskets (G-1)", "12", "2 to 5 (5)", "2 to 5 (5)", "1", "4 within 30 days", "4 counted on 1 Nov 2026, 3 went in since"], Cells(table, 0));
        Assert.Equal(
            [
                "Sandvale", "Exhaust gaskets, trainer-4", "12", "at least 2 to 5 (5)", "at least 2 to 5 (5)", "not told", "",
                "2 failed and wait for a part; 3 in service of unknown age not counted; a failure takes 1.5 parts",
            ],
            Cells(table, 1));
        Assert.Contains("Parts that are renewed by a time limit or for other work come on top.", page.TextContent, StringComparison.Ordinal);
        Assert.Contains(
            "Sandvale: too few couplings have failed to say how many will be needed; 1 went in in the last 365 days.", page.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("No stock has been told", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_why_there_is_nothing()
    {
        Assert.Contains("No part in service is known", Page(Snapshot()).TextContent, StringComparison.Ordinal);
        Assert.Contains("a kind of part is foreseen once 3 of it have failed", Page(Snapshot() with { Spares = [Untold()] }).TextContent, StringComparison.Ordinal);
        Assert.Contains("No stock has been told", Page(Snapshot() with { Spares = [Need("G-1", onHand: null)] }).TextContent, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Cells(IElement table, int row) => table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent);

    private static IElement Page(TrendSnapshot trends) => new HtmlParser().ParseDocument(ReportHtml.Render(SparesSection.Compose(trends))).Body!;

    private static IElement? Section(TrendSnapshot trends, ReportScope scope) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(trends, null, Inputs(scope)).RenderWhole().Html).QuerySelector("section[aria-labelledby=ft-spares]");

    private static SpareNeed Untold() => Need(null, Away, onHand: null) with
    {
        Kinds = ["coupling"],
        KindTitles = ["Coupling"],
        Parts = 0,
        TooFewFailures = 4,
        Horizons = [],
        UsedInYear = 1,
    };

    internal static SpareNeed Need(string? number, string atBase = Home, int? onHand = null)
    {
        var half = DemandForecast.FromChances([0, 0, 0.5, 0, 0, 0.5]);
        return new SpareNeed
        {
            TypeGroups = [Trainer],
            Kinds = ["gasket"],
            KindTitles = ["Exhaust gasket"],
            Base = atBase,
            PartNumber = number,
            Parts = 12,
            AgeUnknown = 0,
            TooFewFailures = 0,
            Waiting = 0,
            UsedInYear = 7,
            Failures = 20,
            PartsPerFailure = 1,
            Horizons = [SpareHorizon.From(30, half), SpareHorizon.From(90, half)],
            ServiceLevel = 0.95,
            Confidence = 0.95,
            Stock = onHand is { } left ? new SpareStock(new DateOnly(2026, 11, 1), left + 3, 3, 10, new RecordKey("shop-cards", "shelf", 1)) : null,
        };
    }
}
