using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Repairs;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>Whether repairs hold: a few verdicts in the mail, all of them with their counts on a page.</summary>
public sealed class RepairsSectionTests
{
    private const string Verdict =
        "Of 14 weld repairs at welds of a Y joint 9 cracked again within 200 h (2 not followed that long); of 11 replacements 1. A replacement holds about 4.5 times as long "
        + "as a weld repair. Before that these locations had, per 1,000 h, cracks: 1.8 where welded, 2.1 where replaced. If they held alike, a difference this large would come "
        + "up about once in 250, all comparisons allowed for.";

    [Fact]
    public void The_mail_has_three_verdicts_and_a_link()
    {
        var section = Section(Enumerable.Range(0, 5).Select(_ => Trend()))!;
        Assert.Equal([Verdict, Verdict, Verdict], section.QuerySelectorAll("li").Select(l => l.TextContent));
        var link = section.QuerySelector("a")!;
        Assert.Equal(("2 more, with counts", "http://fleet.example:8080/repairs"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact] // Told: a difference, or a third of five repairs back by 200 h. Fewer, or of a type group that no aircraft of the report has: nothing.
    public void Where_nothing_is_to_act_on_there_is_no_section()
    {
        Assert.Null(Section([]));
        Assert.NotNull(Section([Trend(RepairFinding.NoneShown)]));
        Assert.NotNull(Section([Trend(back: 0)]));
        Assert.Null(Section([Trend(RepairFinding.NoneShown, back: 3)]));
        Assert.Null(Section([Trend() with { TypeGroup = "another" }]));
    }

    [Fact]
    public void The_page_has_counts_shares_and_comparisons()
    {
        var page = Page(Snapshot() with { Repairs = [Trend()] });
        Assert.Contains(RepairWords.Meaning, page.TextContent, StringComparison.Ordinal);
        Assert.Equal("Weld of a Y joint, crack, " + Snapshot().Fleet[0].TypeGroup, page.QuerySelector("h3")!.TextContent);
        Assert.Contains(Verdict, page.TextContent, StringComparison.Ordinal);
        var tables = page.QuerySelectorAll("table");
        Assert.Equal(
            ["Welded", "14", "8", "(9 of 12) 64 % (95 % interval 40 % to 85 %)", "1.8 (95 % interval 1.0 to 3.0)", "1"], Cells(tables[0], 0));
        Assert.Equal(
            ["A replacement holds about 4.5 times as long as a weld repair", "4.5 times (95 % interval 1.9 to 11)", "p = 0.0040", "holds longer"], Cells(tables[1], 0));
        Assert.Contains("p after Holm 1979", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_lists_at_most_75_rows()
    {
        var page = Page(Snapshot() with { Repairs = [.. Enumerable.Repeat(Trend(), 60)] });
        Assert.Equal(37, page.QuerySelectorAll("h3").Length);
        Assert.Contains("23 more kinds of location and condition. ListRepairs has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_was_repaired_the_page_says_so() =>
        Assert.Contains("No repair of a finding is recorded, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);

    [Fact] // Few repairs are told by their counts; what is not called is not told as a difference.
    public void Few_repairs_are_told_by_their_counts()
    {
        var few = new RepairComparison
        {
            Longer = ActionKind.Replaced,
            Shorter = ActionKind.StopDrilled,
            Counts = new RepairCounts(200, 0, 5, 3, 4),
            PValue = 0.1,
            AdjustedPValue = 0.2,
            Finding = RepairFinding.NoneShown,
        };
        Assert.Equal("within 200 h 3 of 4 stop drillings cracked again, and 0 of 5 replacements", RepairWords.Compared(few, Condition.Crack));
        Assert.Contains("No difference between them is shown; there may still be one.", RepairWords.Verdict(Trend() with { Comparisons = [few] }), StringComparison.Ordinal);
        Assert.Equal(
            "too few have come back to compare a replacement with a stop drilling", RepairWords.Compared(few with { Counts = null, PValue = null }, Condition.Crack));
    }

    internal static RepairTrend Trend(RepairFinding finding = RepairFinding.HoldsLonger, int back = 9) => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Kind = "y-weld",
        Title = "Weld of a Y joint",
        Condition = Condition.Crack,
        Actions = [Action(ActionKind.WeldRepaired, 14, back, 12 - back, 1.8), Action(ActionKind.Replaced, 11, 1, 10, 2.1)],
        Comparisons =
        [
            new RepairComparison
            {
                Longer = ActionKind.Replaced, Shorter = ActionKind.WeldRepaired, TimesAsLong = InventedFigures.OfLives(4.5, 1.9, 11, "", 12, 25),
                PValue = 0.004, AdjustedPValue = 0.004, Finding = finding,
            },
        ],
    };

    private static RepairedAction Action(ActionKind kind, int repairs, int known, int held, double before) => new()
    {
        Action = kind,
        Repairs = repairs,
        Aircraft = 8,
        NotLookedAt = 1,
        CameBack = known,
        FollowedHours = 700,
        Shares = [new ShareBack(200, known, held, InventedFigures.OfLives(0.64, 0.4, 0.85, "", known, repairs - 1))],
        Before = InventedFigures.Rate(10, 5500, before, 1, 3),
    };

    private static IElement? Section(IEnumerable<RepairTrend> trends)
    {
        var report = WeeklyReport.Compose(Snapshot() with { Repairs = [.. trends] }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "repairs") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(RepairsSection.Compose(snapshot))).Body!;

    private static IEnumerable<string> Cells(IElement table, int row) =>
        table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent);
}
