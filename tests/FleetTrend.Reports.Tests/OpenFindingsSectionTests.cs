using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.OpenFindings;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What is open now: leaks and missing pieces in the mail, all of it on a page.</summary>
public sealed class OpenFindingsSectionTests
{
    [Fact] // Seven leaks and three cracks: five rows, and the other five by link.
    public void The_mail_has_the_leaks_that_are_open_longest_and_a_link()
    {
        var section = Section(Now([.. Leaks(7), .. Cracks(3)]), ReportScope.WholeFleet)!;
        var items = section.QuerySelectorAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(5, items.Count);
        Assert.Equal("ZZ-A01, cyl 3 flange weld: leak trace, deferred on 2 Nov 2026; first seen 41 h ago, last looked at 12 h ago.", items[0]);
        var link = section.QuerySelector("a")!;
        Assert.Equal(("5 more", "http://fleet.example:8080/open"), (link.TextContent, link.GetAttribute("href")));
        var rest = section.QuerySelectorAll("p").Select(p => p.TextContent).ToList();
        Assert.Equal(
            "10 findings are open on 7 aircraft: 7 leak traces, 3 cracks. An exhaust leak can put carbon monoxide into the cabin and hot gas onto fuel lines "
            + "and structure. Whether an aircraft flies with it is for the licensed person to decide, not for this list.",
            rest[0]);
        Assert.InRange(string.Join(' ', rest).Split(' ').Length, 1, 60);
    }

    [Fact]
    public void Without_leaks_the_mail_counts_and_links()
    {
        var section = Section(Now(Cracks(1)), ReportScope.WholeFleet)!;
        Assert.Empty(section.QuerySelectorAll("li"));
        Assert.StartsWith("1 finding is open on 1 aircraft: 1 crack. Whether", section.QuerySelector("p")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("The list", section.QuerySelector("a")!.TextContent);
    }

    [Fact] // Odd tails are at home, even ones away.
    public void A_report_of_a_base_has_its_own() =>
        Assert.Equal(["ZZ-A02"], Section(Now(Leaks(3)), new ReportScope(Away))!.QuerySelectorAll("li").Select(l => l.TextContent[..6]));

    [Fact]
    public void Where_nothing_is_open_there_is_no_section() => Assert.Null(Section(Now([]), ReportScope.WholeFleet));

    [Fact]
    public void The_page_has_every_open_finding_with_its_caution()
    {
        var page = Page(Now([.. Leaks(2), .. Cracks(1)]));
        Assert.Equal(["Leaks and missing pieces", "Other findings"], page.QuerySelectorAll("h3").Select(h => h.TextContent));
        Assert.Contains("carbon monoxide", page.QuerySelector("strong")!.TextContent, StringComparison.Ordinal);
        var rows = page.QuerySelectorAll("tbody tr").Select(r => r.Children.Select(c => c.TextContent).ToList()).ToList();
        Assert.Equal(3, rows.Count);
        Assert.Equal(["ZZ-A01", "Cyl 3 flange weld", "Leak trace", "Deferred on 2 Nov 2026", "2 Nov 2026", "41", "12", "", "Draft"], rows[0]);
        Assert.Equal(["ZZ-A01", "Cyl 3 flange weld", "Crack", "No action recorded", "2 Nov 2026, at the first look", "30", "12", "9.0 mm, 4.0 mm 29 h before", "Draft"], rows[2]);
        Assert.Contains("as of 22 Nov 2026 05:30 UTC", page.TextContent);
        Assert.Equal("/aircraft/ZZ-A01", page.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal("/aircraft/ZZ-A01/draft?source=shop-cards&record=f-1", page.QuerySelectorAll("a")[1].GetAttribute("href"));
    }

    [Fact] // Corrosion lets no gas out: regulations do not ask for it by its kind.
    public void Only_what_may_have_to_be_reported_has_a_link_to_a_draft()
    {
        var page = Page(Now([Finding(1, Condition.Corrosion), Finding(2, Condition.Erosion)]));
        Assert.Equal(["Draft", ""], page.QuerySelectorAll("tbody tr").Select(r => r.Children[8].TextContent).OrderDescending());
    }

    [Fact] // Of a hundred tails nobody reads more than some rows at once; what is left out is said.
    public void The_page_of_a_large_fleet_says_how_many_it_leaves_out() =>
        Assert.Contains("51 more.", Page(Now(Cracks(251))).TextContent);

    [Fact]
    public void The_page_says_where_nothing_is_open() => Assert.Contains(
        "No finding is open, as of 22 Nov 2026 05:30 UTC",
        Page(Now([]) with { Fleet = [Line(1) with { OpenEvents = 0 }] }).TextContent, StringComparison.Ordinal);

    [Fact] // Trends of an earlier version counted open findings by aircraft and listed none: that is not "nothing open".
    public void What_was_counted_and_not_listed_is_not_called_closed() => Assert.Contains(
        "12 findings are open, as of 22 Nov 2026 05:30 UTC. The next refresh lists them.", Page(Now([])).TextContent, StringComparison.Ordinal);

    private static IElement Page(TrendSnapshot trends) => new HtmlParser().ParseDocument(ReportHtml.Render(OpenFindingsSection.Compose(trends))).Body!;

    private static IElement? Section(TrendSnapshot trends, ReportScope scope) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(trends, null, Inputs(scope)).RenderWhole().Html).QuerySelector("section[aria-labelledby=ft-open]");

    private static TrendSnapshot Now(IEnumerable<OpenFinding> open) => Snapshot() with { OpenFindings = [.. Analyses.OpenFindings.Order(open)] };

    private static IEnumerable<OpenFinding> Leaks(int count) => Enumerable.Range(1, count).Select(i => Finding(i, Condition.LeakTrace) with
    {
        HoursSinceFound = 42 - i,
        LeftBy = ActionKind.Deferred,
        LeftDate = new DateOnly(2026, 11, 2),
    });

    private static IEnumerable<OpenFinding> Cracks(int count) => Enumerable.Range(1, count).Select(i => Finding(i, Condition.Crack) with
    {
        PresentAtEntry = true,
        FirstMillimetres = 4,
        LastMillimetres = 9,
        GrowthHours = 29,
    });

    private static OpenFinding Finding(int tail, Condition condition) => new()
    {
        Registration = Tail(tail),
        Base = tail % 2 == 1 ? Home : Away,
        TypeGroup = Trainer,
        Location = FlangeWeld,
        Kind = "flange-weld",
        Condition = condition,
        FoundDate = new DateOnly(2026, 11, 2),
        FoundHours = 1200,
        HoursSinceFound = 30,
        LastLookDate = new DateOnly(2026, 11, 12),
        HoursSinceLook = 12,
        Evidence = [new RecordKey("shop-cards", $"f-{tail}", 1)],
    };
}
