using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.RenewalAges;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>When to renew and how often to look: where renewing helps in the report, every kind on a page.</summary>
public sealed class RenewalAgesSectionTests
{
    private const string Line = "saves about 35 % of what running to failure costs, if a failure in service costs 5.0 times a planned renewal. No limit of the maker has been told: "
        + "look it up before using this age. Look every 85 h at most, and no more than 5 % of good ones fail before the next look, up to an age of 450 h; to be sure of it, every 61 h. "
        + "The interval set now is 100 h, in which up to 6.0 % fail. No greatest look interval of the maker has been told: look it up.";

    [Fact]
    public void The_report_has_three_kinds_where_renewing_helps_the_caution_and_a_link()
    {
        var section = Section([.. Enumerable.Range(1, 5).Select(_ => Age()), Age() with { Finding = RenewalFinding.DoesNotWearOut }])!;
        Assert.Equal(3, section.QuerySelectorAll("li").Length);
        Assert.All(section.QuerySelectorAll("li"), l => Assert.EndsWith($"renewing a good one at 450 h {Line}", l.TextContent, StringComparison.Ordinal));
        Assert.Contains(RenewalAgeWords.Caution, section.TextContent, StringComparison.Ordinal);
        var link = section.QuerySelector("a")!;
        Assert.Equal(("2 more, and where renewing does not help", "http://fleet.example:8080/renewal"), (link.TextContent, link.GetAttribute("href")));
    }

    [Fact]
    public void Where_renewing_helps_nowhere_in_scope_there_is_no_section()
    {
        Assert.Null(Section([]));
        Assert.Null(Section([Age() with { Finding = RenewalFinding.NotShown }]));
        Assert.Null(Section([Age() with { TypeGroup = "elsewhere" }]));
    }

    [Fact]
    public void The_page_has_every_kind_with_the_limits_of_the_maker()
    {
        var page = Page(Snapshot() with { RenewalAges = [Age() with { MakerRenewalHours = 900 }, Bare()] });
        var cells = page.QuerySelectorAll("tbody tr")[0].Children.Select(c => c.TextContent).ToList();
        Assert.Equal(["450 h (95 % interval 380 to 560)", "900 h", "450 h", "35 % (95 % interval 21 % to 47 %)"], cells[3..7]);
        Assert.Equal("not told", page.QuerySelectorAll("tbody tr")[1].Children[4].TextContent);
        Assert.Contains("not enough data: 1 failure among 9 lives, and a fit needs 3. More failures, found on more than one aircraft, would tell.", page.TextContent, StringComparison.Ordinal);
        Assert.Contains(RenewalAgeWords.Caution, page.TextContent, StringComparison.Ordinal);
        Assert.Contains(RenewalAgeWords.Assumptions, page.TextContent, StringComparison.Ordinal);
        Assert.Contains("No life of a part is known, as of", Page(Snapshot()).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_lists_at_most_75_kinds()
    {
        var page = Page(Snapshot() with { RenewalAges = [.. Enumerable.Repeat(Age(), 80)] });
        Assert.Equal(75, page.QuerySelectorAll("tbody tr").Length);
        Assert.Contains("5 more. ListRenewalAges has all of them.", page.TextContent, StringComparison.Ordinal);
    }

    private static RenewalAge Bare() => new()
    {
        TypeGroup = Snapshot().Fleet[0].TypeGroup,
        Kind = "gasket",
        Title = "Exhaust gasket",
        Failures = 1,
        Lives = 9,
        CostRatio = 5,
        AllowedChance = 0.05,
        SetLookHours = 100,
        Finding = RenewalFinding.NotKnown,
        NotEnoughData = "not enough data: 1 failure among 9 lives, and a fit needs 3",
    };

    private static RenewalAge Age() => Bare() with
    {
        Failures = 30,
        Lives = 90,
        Finding = RenewalFinding.Renew,
        NotEnoughData = null,
        Shape = InventedFigures.OfLives(2.2, 1.6, 3.0, "", 30, 90),
        CheapestAge = InventedFigures.OfLives(450, 380, 560, "h", 30, 90),
        AgeHours = 450,
        Saved = InventedFigures.OfLives(0.35, 0.21, 0.47, "", 30, 90),
        LookedAtUntilHours = 450,
        LongestLook = InventedFigures.OfLives(85, 61, 110, "h", 30, 90),
        LookHours = 85,
        ChanceAtSet = InventedFigures.OfLives(0.06, 0.04, 0.09, "", 30, 90),
    };

    private static IElement? Section(IReadOnlyList<RenewalAge> ages)
    {
        var report = WeeklyReport.Compose(Snapshot() with { RenewalAges = ages }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        return report.Document.Sections.FirstOrDefault(s => s.Name == "renewal-ages") is { } section
            ? new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body
            : null;
    }

    private static IElement Page(TrendSnapshot snapshot) => new HtmlParser().ParseDocument(ReportHtml.Render(RenewalAgesSection.Compose(snapshot))).Body!;
}
