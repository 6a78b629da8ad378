using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Quiet;
using static FleetTrend.Reports.Tests.InventedFigures;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What is too quiet: three lines and a link in the mail, all of it on a page.</summary>
public sealed class QuietSectionTests
{
    [Fact]
    public void The_mail_has_at_most_three_questions_and_a_link()
    {
        var report = WeeklyReport.Compose(Now(), null, Inputs(ReportScope.WholeFleet)).RenderWhole();
        var section = new HtmlParser().ParseDocument(report.Html).QuerySelector("section[aria-labelledby=ft-quiet]")!;
        Assert.Equal(["Question 1?", "Question 2?", "Question 3?"], section.QuerySelectorAll("li").Select(l => l.TextContent));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("1 more, with counts", "http://fleet.example:8080/too-quiet"), (link.TextContent, link.GetAttribute("href")));
        Assert.Contains("Question 3?", report.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Question 4?", report.Text, StringComparison.Ordinal);
    }

    [Fact] // Aircraft 2 is at the other base.
    public void A_report_of_a_base_asks_about_its_own()
    {
        var section = Section(WeeklyReport.Compose(Now(), null, Inputs(new ReportScope(Away))));
        Assert.Equal(["Question 3?"], section!.QuerySelectorAll("li").Select(l => l.TextContent));
        Assert.Equal("The counts behind it", section.QuerySelector("a")!.TextContent);
    }

    [Fact]
    public void Where_nothing_is_asked_there_is_no_section() => Assert.Null(Section(WeeklyReport.Compose(
        Snapshot() with { Quiet = [Quiet(4, []) with { Verdict = QuietVerdict.Ordinary }] }, null, Inputs(ReportScope.WholeFleet))));

    [Fact]
    public void The_page_has_every_question_with_its_counts_interval_method_and_day()
    {
        var page = new HtmlParser().ParseDocument(ReportHtml.Render(QuietSection.Compose(Now()))).Body!;
        Assert.Equal(["Question 1?", "Question 2?", "Question 3?", "Question 4?"], page.QuerySelectorAll("li").Select(l => l.TextContent));
        var tables = page.QuerySelectorAll("table");
        Assert.Contains("0.14 times (95 % interval 0.010 to 0.77; 1 event)", tables[0].QuerySelector("caption")!.TextContent);
        Assert.Equal(["All since 3 Feb 2026", "1", "7.2", "Cracks, in all", "4", "12"], Cells(tables[0]));
        Assert.Equal(["Muffler baffle", "never", "1,240", "11", "17 of 19"], Cells(tables[1]));
        Assert.Contains("Of 1 aircraft nothing can be said yet", page.TextContent);
        Assert.Contains("exact Poisson limits", page.TextContent);
        Assert.Contains("as of 22 Nov 2026 05:30 UTC", page.TextContent);
        Assert.Equal("/v1/trends/evidence?registration=ZZ-A01", page.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void The_page_says_where_there_is_nothing_to_ask() =>
        Assert.Contains("Nothing to ask, as of 22 Nov 2026 05:30 UTC.", ReportHtml.Render(QuietSection.Compose(Snapshot())), StringComparison.Ordinal);

    private static IEnumerable<string> Cells(IElement table) => table.QuerySelectorAll("tbody th, tbody td").Select(c => c.TextContent);

    private static IElement? Section(WeeklyReport report) =>
        new HtmlParser().ParseDocument(report.RenderWhole().Html).QuerySelector("section[aria-labelledby=ft-quiet]");

    private static TrendSnapshot Now() => Snapshot() with
    {
        Quiet = [Quiet(1, ["Question 1?", "Question 2?"]), Quiet(2, ["Question 3?"]), Quiet(3, ["Question 4?"]), Quiet(5, []) with { Verdict = QuietVerdict.TooEarly }],
    };

    private static Quietness Quiet(int tail, string[] questions) => new()
    {
        TypeGroup = Trainer,
        Registration = Tail(tail),
        Base = tail % 2 == 1 ? Home : Away,
        Verdict = QuietVerdict.Asked,
        LogOdds = 3,
        SinceDate = new DateOnly(2026, 2, 3),
        Hours = 470,
        Found = 1,
        Expected = 7.2,
        Ratio = Ratio(0.139, 0.01, 0.774, 1, 0) with { ExposureHours = null, Method = "exact Poisson limits" },
        Classes = [new QuietClass(Condition.Crack, null, 4, 12)],
        Unexamined =
        [
            new UnexaminedLocation
            {
                Location = "exhaust/muffler/baffle", Kind = "muffler-baffle", Hours = 1240, InspectionCount = 11, OthersExamined = 17, OthersCount = 19, Evidence = [],
            },
        ],
        Questions = questions,
        Evidence = [],
    };
}
