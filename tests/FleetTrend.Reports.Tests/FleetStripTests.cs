using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Pictures;

namespace FleetTrend.Reports.Tests;

/// <summary>The strip of the fleet says of each aircraft what there is to say, without colour, and stays small.</summary>
public sealed class FleetStripTests
{
    private const int MostBytes = 40_000;

    [Fact]
    public void Each_aircraft_is_a_link_with_a_title_that_says_what_is_drawn()
    {
        var strip = Parse(FleetStrip.Draw([new("ZZ-A01", 2, 62.4, 100, 1), new("ZZ-A02", 0, 12, 100, 0), new("ZZ-A03", 0, 130.2, 100, 0), new("ZZ-A04", 0, null, 100, 0)])!);
        Assert.Equal(
            [
                "ZZ-A01: 2 open leaks, 1 open call, 62.4 h since its last inspection",
                "ZZ-A02: 12 h since its last inspection",
                "ZZ-A03: 130 h since its last inspection, past its look interval",
                "ZZ-A04: never inspected",
            ],
            strip.QuerySelectorAll("title").Select(t => t.TextContent));
        Assert.Equal(
            ["/aircraft/ZZ-A01", "/aircraft/ZZ-A02", "/aircraft/ZZ-A03", "/aircraft/ZZ-A04"], strip.QuerySelectorAll("a").Select(a => a.GetAttribute("href")!));
        var marks = strip.QuerySelectorAll("svg");
        Assert.Equal(["ZZ-A01", "2", "1"], marks[0].QuerySelectorAll("text").Select(t => t.TextContent));
        Assert.Equal([(1, 1), (0, 0), (0, 0), (0, 0)], marks.Select(m => (m.QuerySelectorAll(".ft-leak").Length, m.QuerySelectorAll(".ft-call").Length)));
        Assert.Equal([1, 1, 2, 2], marks.Select(m => m.QuerySelectorAll(".ft-box").Length)); // a double frame where it is past
        Assert.Equal(["41.2", "7.9", "66", null], marks.Select(m => m.QuerySelector(".ft-bar")?.GetAttribute("width"))); // 66 for a whole interval
        Assert.Null(strip.QuerySelector("p"));
    }

    [Fact]
    public void Of_a_thousand_aircraft_those_with_something_to_say_are_drawn_the_rest_counted_and_it_stays_small()
    {
        List<StripTail> tails =
            [.. Enumerable.Range(0, 1000).Select(i => new StripTail($"ZZ-{i:0000}", i % 100 == 0 ? 1 : 0, i % 50 == 1 ? 120 : 40, 100, i % 200 == 2 ? 1 : 0))];
        var strip = Parse(FleetStrip.Draw(tails)!);
        Assert.Equal(10 + 20 + 5, strip.QuerySelectorAll("svg").Length);
        Assert.Equal("Not drawn: 965 with no leak, no call and a look within its interval.", strip.QuerySelector("p")!.TextContent);

        var worst = FleetStrip.Draw([.. tails.Select(t => t with { OpenLeaks = 12, OpenCalls = 12, HoursSinceLook = 1234.5 })])!;
        Assert.InRange(Encoding.UTF8.GetByteCount(worst), 20_000, MostBytes);
        Assert.Contains("Not drawn: 940 more with a leak, a call or a look past its interval, and 0 with no leak", worst, StringComparison.Ordinal);
    }

    [Fact]
    public void No_aircraft_is_no_strip() => Assert.Null(FleetStrip.Draw([]));

    private static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);
}
