using System.Globalization;
using AngleSharp.Html.Parser;
using FleetTrend.Records.Layouts;
using FleetTrend.Reports.Pictures;

namespace FleetTrend.Reports.Tests;

/// <summary>The outline of a type group's systems.</summary>
public sealed class SystemOutlineTests
{
    public static TheoryData<string> Layouts => [.. ShippedLayouts.All.Select(l => l.Name)];

    [Theory]
    [MemberData(nameof(Layouts))]
    public void Every_place_of_a_layout_is_drawn_once_inside_the_picture(string layout)
    {
        var paths = ShippedLayouts.All.Single(l => l.Name == layout).Locations.Select(l => l.Path).ToList();
        var drawing = Draw([.. paths.Select((p, i) => Spot(p, i))]);
        Assert.Equal(paths.Count, drawing.QuerySelectorAll("circle").Length);
        Assert.Equal(
            paths.Select(p => "/at/" + p).Order(StringComparer.Ordinal),
            drawing.QuerySelectorAll("a").Select(a => a.GetAttribute("href")!).Order(StringComparer.Ordinal));
        var size = drawing.QuerySelector("svg")!.GetAttribute("viewBox")!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        Assert.All(drawing.QuerySelectorAll("circle"), c =>
        {
            Assert.InRange(Value(c, "cx"), Value(c, "r"), size[2] - Value(c, "r"));
            Assert.InRange(Value(c, "cy"), Value(c, "r"), size[3] - Value(c, "r"));
        });
        // No two spots on one place.
        Assert.Equal(paths.Count, drawing.QuerySelectorAll("circle").Select(c => (Value(c, "cx"), Value(c, "cy"))).Distinct().Count());
    }

    [Fact] // By hand: areas in proportion to counts, so that four times as many have twice the radius: 8 and 4.
    public void Spots_have_areas_in_proportion_to_counts()
    {
        var drawing = Draw([Spot("exhaust/cyl-1/flange-weld", 16), Spot("exhaust/cyl-2/flange-weld", 4), Spot("exhaust/left/y-weld", 0)]);
        Assert.Equal([8, 4, 3], drawing.QuerySelectorAll("circle").Select(c => Value(c, "r")));
        Assert.Equal(["ft-spot", "ft-spot", "ft-none"], drawing.QuerySelectorAll("circle").Select(c => c.ClassName));
        Assert.Equal(["16 flange weld: cyl 1", "4 flange weld: cyl 2", "y weld: left, none"], drawing.QuerySelectorAll("a").Select(a => a.GetAttribute("aria-label")));
    }

    [Fact] // An operator's own path of two parts, and one of four.
    public void Paths_of_any_depth_are_drawn()
    {
        var drawing = Draw([Spot("oil/cooler", 1), Spot("oil/line/left/fitting", 2)]);
        Assert.Equal(2, drawing.QuerySelectorAll("circle").Length);
        Assert.Contains(drawing.QuerySelectorAll("text"), t => t.TextContent == "2 left fitting");
    }

    [Fact]
    public void Nothing_is_drawn_of_nothing() => Assert.Null(SystemOutline.Draw("Cracks", []));

    private static OutlineSpot Spot(string path, int count) => new(path, count, new Uri("/at/" + path, UriKind.Relative));

    private static AngleSharp.Html.Dom.IHtmlDocument Draw(IReadOnlyList<OutlineSpot> spots) => new HtmlParser().ParseDocument(SystemOutline.Draw("Cracks", spots)!);

    private static double Value(AngleSharp.Dom.IElement element, string name) => double.Parse(element.GetAttribute(name)!, CultureInfo.InvariantCulture);
}
