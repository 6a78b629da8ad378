using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Silence;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What no longer comes is said first, and a week with a silence is not called quiet.</summary>
public sealed class SilenceSectionTests
{
    [Fact]
    public void A_silent_aircraft_comes_before_the_news_and_changes_the_subject()
    {
        var report = Report(Snapshot() with { Silences = [Silent(7)], DataProblems = [] }, Inputs(ReportScope.WholeFleet));
        Assert.Equal("silence", report.Document.Sections[0].Name);
        Assert.Equal("No new flags, whole fleet, and no word from 1 aircraft", report.Subject);
        var section = Html(report.Document.Sections[0]);
        Assert.Equal("ZZ-A07: nothing since 2 Jan 2026, 320 days; before that never longer than 41 days.", section.QuerySelector("li")!.TextContent);
        Assert.StartsWith(
            $"No longer sending as before: 1 of {Snapshot().Fleet.Count(l => l.RetiredDate is null)} aircraft.", section.QuerySelector("p")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("http://fleet.example:8080/silent", section.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact] // Tried once: the newest inspection eleven months old, and the mail said "Quiet week".
    public void Where_no_aircraft_sends_the_week_is_not_called_quiet()
    {
        var now = Snapshot();
        var flying = now.Fleet.Where(l => l.RetiredDate is null);
        var all = now with { Silences = [.. flying.Select((l, i) => Silent(i + 1) with { Registration = l.Registration, Base = l.Base })] };
        Assert.Equal("No word from any aircraft, whole fleet: nothing new can be said", Report(all, Inputs(ReportScope.WholeFleet)).Subject);
        Assert.Contains("every figure is of the days before", Report(all, Inputs(ReportScope.WholeFleet)).RenderWhole().Text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(5, Html(Report(all, Inputs(ReportScope.WholeFleet)).Document.Sections[0]).QuerySelectorAll("li").Length);
    }

    [Fact] // Where hours still come, an aircraft sends: only its inspections are missing.
    public void Where_only_inspections_are_missing_it_is_not_said_that_nothing_comes()
    {
        var now = Snapshot() with { DataProblems = [] };
        var flying = now.Fleet.Where(l => l.RetiredDate is null).ToList();
        var all = now with
        {
            Silences = [.. flying.Select((l, i) => Silent(i + 1) with { Registration = l.Registration, Base = l.Base, HoursStillCome = true })],
        };
        var report = Report(all, Inputs(ReportScope.WholeFleet));
        Assert.Equal($"No new flags, whole fleet, and no inspections of {flying.Count} aircraft", report.Subject);
        Assert.StartsWith(
            $"No longer sending as before: {flying.Count} of", Html(report.Document.Sections[0]).QuerySelector("p")!.TextContent, StringComparison.Ordinal);
    }

    [Fact] // A silent aircraft of another base is told there.
    public void A_base_hears_of_its_own()
    {
        var now = Snapshot() with { Silences = [Silent(7)], DataProblems = [] };
        Assert.NotEqual("silence", Report(now, Inputs(new ReportScope(Away))).Document.Sections[0].Name);
        Assert.Equal("Quiet week at Sandvale: no new flags", Report(now, Inputs(new ReportScope(Away))).Subject);
    }

    [Fact]
    public void A_silent_source_is_named()
    {
        var inputs = Inputs(ReportScope.WholeFleet) with { SilentSources = [new SilentSource("west-tablet", new Habit(new DateOnly(2026, 10, 1), 52, 4, 90))] };
        var report = Report(Snapshot() with { DataProblems = [] }, inputs);
        Assert.Equal("No new flags, whole fleet, and no word from 1 source", report.Subject);
        Assert.Equal(
            "Source west-tablet: nothing since 1 Oct 2026, 52 days; before that never longer than 4 days.", Html(report.Document.Sections[0]).QuerySelector("li")!.TextContent);
    }

    [Fact]
    public void The_page_lists_all_with_the_rule_and_says_where_there_is_none()
    {
        var page = Html(SilenceSection.Compose(Snapshot() with { Silences = [Silent(7) with { HoursStillCome = true }] }));
        var cells = page.QuerySelector("tbody tr")!.Children.Select(c => c.TextContent);
        Assert.Equal(["ZZ-A07", "Quillmoor", "Inspections", "2 Jan 2026", "320", "41"], cells);
        var source = new SilentSource("west-tablet", new Habit(new DateOnly(2026, 10, 1), 52, 4, 90));
        Assert.Equal(
            "Source west-tablet: nothing since 1 Oct 2026, 52 days; before that never longer than 4 days.", Html(SilenceSection.Compose(Snapshot(), [source])).QuerySelector("li")!.TextContent);
        var none = Html(SilenceSection.Compose(Snapshot())).TextContent;
        Assert.Contains("Every aircraft that flies has sent as it used to", none, StringComparison.Ordinal);
        Assert.Contains("more than twice its longest gap", none, StringComparison.Ordinal);
    }

    private static AircraftSilence Silent(int tail) => new()
    {
        Registration = Tail(tail),
        Base = Home,
        TypeGroup = "trainer-four",
        HoursStillCome = false,
        LastDate = new DateOnly(2026, 1, 2),
        DaysSince = 320,
        LongestGapDays = 41,
        IsOwnGap = true,
        Evidence = [],
    };

    private static WeeklyReport Report(TrendSnapshot now, ReportInputs inputs) => WeeklyReport.Compose(now, WeekBefore(), inputs);

    private static IElement Html(ReportSection section) => new HtmlParser().ParseDocument(ReportHtml.Render(section)).Body!;
}
