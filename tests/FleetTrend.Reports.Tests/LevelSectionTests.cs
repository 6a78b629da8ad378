using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What a report says of levels. Expected words are derived by hand from the invented fleet.</summary>
public sealed class LevelSectionTests
{
    private static IDocument Report(TrendSnapshot now, TrendSnapshot? before, ReportInputs inputs) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(now, before, inputs).RenderWhole().Html);

    private static string Section(IDocument document, string name) =>
        document.QuerySelector($"section[aria-labelledby=ft-{name}]")?.TextContent ?? "";

    [Fact]
    public void A_level_is_told_as_times_the_norm_with_its_interval_and_as_no_news()
    {
        var document = Report(Snapshot(), null, AllFlags(ReportScope.WholeFleet));
        var levels = Section(document, "levels");
        Assert.Contains("It is no news in itself", levels);
        var said = document.QuerySelectorAll("section[aria-labelledby=ft-levels] li").Select(l => l.TextContent).ToList();
        Assert.Matches(@"^ZZ-A07: cracks, 3\.1 times the norm \(95 % interval 1\.6 to 5\.2; 9 events\) \[\d+\]\.$", Assert.Single(said));
        Assert.Contains("All levels", levels);
        Assert.NotNull(document.QuerySelector("section[aria-labelledby=ft-levels] img[alt*='ZZ-A07 3.1 times']"));
    }

    [Fact] // At Sandvale nobody runs high; ZZ-A07 is at Quillmoor.
    public void Levels_of_a_base_are_those_of_its_own_tails()
    {
        var levels = Section(Report(Snapshot(), null, AllFlags(new ReportScope(Away))), "levels");
        Assert.Contains("None probably runs above 1.5 times the norm.", levels);
        Assert.DoesNotContain("ZZ-A07", levels);
        var weld = Level(2, Condition.Crack) with { Registration = null, Base = null, Location = FlangeWeld, ChanceAboveOneAndAHalf = 0.6 };
        var south = Level(2, Condition.Crack) with { Registration = null, Base = Home, ChanceAboveOneAndAHalf = 0.7 };
        Assert.Contains("Cyl 3 flange weld of trainer-4: cracks", Section(Report(Snapshot() with { Levels = [south, weld] }, null, AllFlags(new ReportScope(Away))), "levels"));
        Assert.DoesNotContain(Home, Section(Report(Snapshot() with { Levels = [south, weld] }, null, AllFlags(new ReportScope(Away))), "levels"));
    }
}
