using AngleSharp.Html.Parser;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Reports.Pictures;
using FleetTrend.Trends.LookLists;

namespace FleetTrend.Reports.Tests;

/// <summary>An aircraft along its flight hours, as a picture.</summary>
public sealed class AircraftTimelineTests
{
    private const string Weld = "exhaust/left/y-weld";
    private const string Gasket = "exhaust/cyl-1/gasket";

    // 170 to 704 of 720 units are 0 to 1,000 h: 0.534 an hour. Cracks at 200 and 600 h stand 213.6 apart, 400 h between them.
    [Fact]
    public void A_row_has_its_looks_findings_actions_and_the_hours_between()
    {
        var svg = new HtmlParser().ParseDocument(AircraftTimeline.Draw(List(
            Line(Weld, [0, 200, 600], Seen(600, ActionKind.Replaced, 600), Seen(200, ActionKind.WeldRepaired, 200)), Line(Gasket, [0, 600])))!);
        Assert.Equal(["276.8", "490.4"], svg.QuerySelectorAll(".ft-found").Select(c => c.GetAttribute("cx")));
        Assert.Equal("400 h", Assert.Single(svg.QuerySelectorAll(".ft-between")).TextContent);
        Assert.Equal(3, svg.QuerySelectorAll(".ft-look").Length);
        Assert.Equal(["path", "rect"], svg.QuerySelectorAll(".ft-done").Select(e => e.LocalName));
        Assert.Equal("Left y weld", Assert.Single(svg.QuerySelectorAll(".ft-place")).TextContent); // the gasket has no finding
        Assert.Equal("ZZ-A00 along its flight hours", svg.QuerySelector("svg title")!.TextContent);
        Assert.StartsWith("left y weld: Crack ", svg.QuerySelector("svg desc")!.TextContent, StringComparison.Ordinal);
    }

    [Fact] // 50 h are 27 units: the mark of the first would be under the number.
    public void Hours_between_findings_that_stand_close_are_left_out() => Assert.DoesNotContain(
        "ft-between", AircraftTimeline.Draw(List(Line(Weld, [0], Seen(250, null, null), Seen(200, ActionKind.StopDrilled, 210))))!, StringComparison.Ordinal);

    [Fact]
    public void Without_findings_or_hours_there_is_no_picture()
    {
        Assert.Null(AircraftTimeline.Draw(List(Line(Weld, [0, 100]))));
        Assert.Null(AircraftTimeline.Draw(List(Line(Weld, [], Seen(10, null, null))) with { LatestHours = null }));
    }

    private static LookList List(params LookListLine[] lines) => new()
    {
        Registration = "ZZ-A00",
        Base = "north",
        TypeGroup = "four",
        LatestHours = 1000,
        Confidence = 0.95,
        Lines = lines,
    };

    private static LookListLine Line(string location, double[] looks, params SeenBefore[] before) => new()
    {
        Location = location,
        Kind = "y-weld",
        LookFor = "",
        Reasons = [],
        Checks = [],
        IntervalHours = 100,
        LookHours = looks,
        Before = before,
        Evidence = [],
    };

    private static SeenBefore Seen(double hours, ActionKind? action, double? at) => new()
    {
        Condition = Condition.Crack,
        FoundDate = new DateOnly(2026, 1, 1),
        FoundHours = hours,
        HoursSinceFound = 1000 - hours,
        Action = action,
        ActionDate = action is null ? null : new DateOnly(2026, 1, 1),
        ActionHours = at,
        IsOpen = action is null,
        Evidence = [],
    };
}
