using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.FailureChances;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Chances before the next look: a few aircraft in the mail, all of them and whether they came true on a page.</summary>
public sealed class FailureChancesSectionTests
{
    [Fact] // Five aircraft are more likely than not to have a failure, one is not.
    public void The_mail_has_three_aircraft_and_a_link()
    {
        var section = Section(Now(0.9, 0.8, 0.7, 0.6, 0.5, 0.4), ReportScope.WholeFleet)!;
        var items = section.QuerySelectorAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(3, items.Count);
        Assert.Equal("ZZ-A01: 1.3 failures among 2 parts before the next look; most likely cyl 2 gasket, 80 %.", items[0]);
        var link = section.QuerySelector("a")!;
        Assert.Equal(("2 more, and whether such chances came true", "http://fleet.example:8080/chances"), (link.TextContent, link.GetAttribute("href")));
        Assert.InRange(string.Join(' ', section.QuerySelectorAll("p").Select(p => p.TextContent)).Split(' ').Length, 1, 60);
    }

    [Fact]
    public void Where_no_aircraft_is_likely_to_have_a_failure_there_is_no_section()
    {
        Assert.Null(Section(Now(0.4), ReportScope.WholeFleet));
        Assert.Null(Section(Snapshot(), ReportScope.WholeFleet));
    }

    [Fact] // Even tails are away.
    public void A_report_of_a_base_has_its_own() =>
        Assert.Equal(["ZZ-A02"], Section(Now(0.9, 0.8, 0.7), new ReportScope(Away))!.QuerySelectorAll("li").Select(l => l.TextContent[..6]));

    [Fact]
    public void The_page_has_every_aircraft_and_whether_chances_came_true()
    {
        var page = Page(FailureChancesSection.Compose(Now(0.9, 0.2) with { ChanceCalibrations = [Calibration()] }));
        var tables = page.QuerySelectorAll("table");
        Assert.Equal(
            ["ZZ-A01", "Quillmoor", "1.3 (1.0 to 1.7)", "90 %", "2", "cyl 2 gasket 80 %, cyl 1 gasket 50 %", "3 of unknown age"], Cells(tables[0], 0));
        Assert.Equal(2, tables[0].QuerySelectorAll("tbody tr").Length);
        Assert.Equal(["1.0 % to 12 %", "100", "6.0", "2 to 11", "5", "within"], Cells(tables[1], 0));
        Assert.Equal(["12 % to 40 %", "100", "20", "13 to 28", "31", "more than foreseen"], Cells(tables[1], 1));
        Assert.Equal(["Gasket", "trainer-4", "all others", "Weibull", "41", "160"], Cells(tables[2], 0));
        Assert.Contains(
            "trainer-4: by what was known on 23 Nov 2025, 26 failures were foreseen at 200 looks since; 36 were found. 1 of 2 groups is outside of the limits.",
            page.TextContent, StringComparison.Ordinal);
        Assert.Contains("A small chance does not show that a part is sound", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_of_one_aircraft_has_every_part()
    {
        var page = Page(FailureChancesSection.Compose(Chance(1, 0.9), AsOf, []));
        Assert.Equal(["Cyl 2 gasket", "Gasket", "400", "430", "500", "80 % (70 % to 88 %)"], Cells(page.QuerySelector("table")!, 0));
        Assert.Contains("Parts without a chance: 3 of unknown age.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_why_there_is_nothing()
    {
        Assert.Contains("No part in service is known", Page(FailureChancesSection.Compose(Snapshot())).TextContent, StringComparison.Ordinal);
        var untold = Chance(1, 0) with { Parts = [], TooFewFailures = 2 };
        Assert.Contains(
            "a kind of part has a chance once 3 of it have failed",
            Page(FailureChancesSection.Compose(Snapshot() with { FailureChances = [untold] })).TextContent,
            StringComparison.Ordinal);
        Assert.Contains("ZZ-A01: nothing can be said, 3 of unknown age", Page(FailureChancesSection.Compose(untold, AsOf, [])).TextContent, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Cells(IElement table, int row) => table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent);

    private static IElement Page(ReportSection section) => new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body!;

    private static IElement? Section(TrendSnapshot trends, ReportScope scope) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(trends, null, Inputs(scope)).RenderWhole().Html).QuerySelector("section[aria-labelledby=ft-chances]");

    private static TrendSnapshot Now(params double[] chances) =>
        Snapshot() with { FailureChances = [.. chances.Select((c, i) => Chance(i + 1, c))] };

    private static FailureChance Chance(int tail, double any) => new()
    {
        Registration = Tail(tail),
        Base = tail % 2 == 1 ? Home : Away,
        TypeGroup = Trainer,
        Parts = [Part("exhaust/cyl-2/gasket", 0.8), Part("exhaust/cyl-1/gasket", 0.5)],
        Expected = 1.3,
        Lower = 1.01,
        Upper = 1.7,
        AnyChance = any,
        Confidence = 0.95,
        AgeUnknown = 3,
        TooFewFailures = 0,
        Evidence = [],
    };

    private static PartChance Part(string location, double chance) => new()
    {
        Location = location,
        Kind = "gasket",
        GoodHours = 400,
        AgeHours = 430,
        NextLookHours = 500,
        Chance = chance,
        Lower = 0.7,
        Upper = 0.88,
    };

    internal static ChanceCalibration Calibration() => new()
    {
        TypeGroup = Trainer,
        FittedDate = new DateOnly(2025, 11, 23),
        Looks = 200,
        Expected = 26,
        Found = 36,
        Confidence = 0.95,
        Groups = [new ChanceGroup(0.01, 0.12, 100, 6, 5, 2, 11), new ChanceGroup(0.12, 0.4, 100, 20, 31, 13, 28)],
        Laws = [new LifeLaw("gasket", null, "Weibull", 41, 160)],
    };
}
