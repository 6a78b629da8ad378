using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.DueLooks;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What is due: what is past its interval in the mail, every aircraft on a page.</summary>
public sealed class DueLooksSectionTests
{
    [Fact] // Seven past their interval by 7 to 1 h, two due in the 28 days from 22 Nov on, one later.
    public void The_mail_has_five_that_are_furthest_past_and_a_link()
    {
        var section = Section(Now(7, 2, 1), ReportScope.WholeFleet)!;
        var items = section.QuerySelectorAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(5, items.Count);
        Assert.Equal("ZZ-A07: 2 of 48 locations past the look interval, by up to 7 h: muffler baffle and 1 more; could not be examined on 2 Nov 2026.", items[0]);
        Assert.Equal(
            ["7 aircraft have locations past the look interval; 2 more come due by 20 Dec 2026.", "All aircraft, with the day on which each is due"],
            section.QuerySelectorAll("p").Select(p => p.TextContent));
        Assert.Equal("http://fleet.example:8080/due", section.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void The_mail_says_in_a_line_where_something_comes_due_and_nothing_is_past() => Assert.Equal(
        "No aircraft has locations past the look interval; 1 more comes due by 20 Dec 2026.",
        Section(Now(0, 1, 3), ReportScope.WholeFleet)!.QuerySelector("p")!.TextContent);

    [Fact]
    public void Where_nothing_is_due_in_four_weeks_there_is_no_section()
    {
        Assert.Null(Section(Now(0, 0, 3), ReportScope.WholeFleet));
        Assert.Null(Section(Snapshot(), ReportScope.WholeFleet));
    }

    [Fact] // Even tails are away.
    public void A_report_of_a_base_has_its_own() =>
        Assert.Equal(["ZZ-A02"], Section(Now(3, 0, 0), new ReportScope(Away))!.QuerySelectorAll("li").Select(l => l.TextContent[..6]));

    [Fact]
    public void The_page_has_every_aircraft_and_what_was_passed_over()
    {
        var tables = Page(DueLooksSection.Compose(Now(1, 1, 1))).QuerySelectorAll("table");
        Assert.Equal(["ZZ-A01", "Quillmoor", "1 past", "now", "12", "2 of 48", "Muffler baffle and 1 more"], Cells(tables[0], 0));
        Assert.Equal(["ZZ-A02", "Sandvale", "40", "15 Dec 2026", "12", "0 of 48", "Cyl 3 flange weld and 47 more"], Cells(tables[0], 1));
        Assert.Equal(["ZZ-A01", "Muffler baffle and 1 more", "1 Sep 2026", "1", "Could not be examined on 2 Nov 2026"], Cells(tables[1], 0));
        Assert.Single(tables[1].QuerySelectorAll("tbody tr"));
    }

    [Fact]
    public void The_page_of_one_aircraft_has_its_locations_by_interval_and_last_look()
    {
        var page = Page(DueLooksSection.Compose(Overdue(1), AsOf));
        Assert.Equal(["Muffler baffle and 1 more", "100", "1 Sep 2026", "101", "1 past", "Could not be examined on 2 Nov 2026"], Cells(page.QuerySelector("table")!, 0));
        Assert.Contains("The intervals are your own", page.TextContent, StringComparison.Ordinal);
    }

    [Fact] // Trends of an earlier version have fleet lines and nothing of what is due.
    public void The_page_says_why_there_is_nothing()
    {
        Assert.Contains("The next refresh says what is due.", Page(DueLooksSection.Compose(Snapshot())).TextContent, StringComparison.Ordinal);
        Assert.Contains("There are no aircraft that fly", Page(DueLooksSection.Compose(Snapshot() with { Fleet = [] })).TextContent, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Cells(IElement table, int row) => table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent);

    private static IElement Page(ReportSection section) => new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body!;

    private static IElement? Section(TrendSnapshot trends, ReportScope scope) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(trends, null, Inputs(scope)).RenderWhole().Html).QuerySelector("section[aria-labelledby=ft-due]");

    private static TrendSnapshot Now(int overdue, int soon, int later) => Snapshot() with
    {
        DueLooks =
        [
            .. Analyses.DueLooks.Order(Enumerable.Range(1, overdue).Select(Overdue)
                .Concat(Enumerable.Range(overdue + 1, soon).Select(i => Ahead(i, new DateOnly(2026, 12, 15))))
                .Concat(Enumerable.Range(overdue + soon + 1, later).Select(i => Ahead(i, new DateOnly(2027, 2, 1))))),
        ],
    };

    private static DueLook Overdue(int tail) => Due(tail, -tail, new DateOnly(2026, 11, 20), 2, new DueGroup
    {
        IntervalHours = 100,
        LastLookDate = new DateOnly(2026, 9, 1),
        HoursSince = 100 + tail,
        Reason = DueReason.CouldNotExamine,
        PassedOverDate = new DateOnly(2026, 11, 2),
        PassedOverCount = 1,
        Count = 2,
        Locations = ["exhaust/muffler/baffle"],
    });

    private static DueLook Ahead(int tail, DateOnly day) => Due(tail, 40, day, 0, new DueGroup
    {
        IntervalHours = 100,
        LastLookDate = new DateOnly(2026, 10, 1),
        HoursSince = 60,
        Reason = DueReason.NoInspection,
        Count = 48,
        Locations = [FlangeWeld],
    });

    private static DueLook Due(int tail, double hours, DateOnly day, int overdue, DueGroup group) => new()
    {
        Registration = Tail(tail),
        Base = tail % 2 == 1 ? Home : Away,
        TypeGroup = Trainer,
        LatestHours = 1300,
        LatestDate = new DateOnly(2026, 11, 21),
        HoursPerWeek = 12.3,
        HoursToNext = hours,
        DueDate = day,
        LocationCount = 48,
        OverdueCount = overdue,
        Groups = [group],
        Evidence = [],
    };
}
