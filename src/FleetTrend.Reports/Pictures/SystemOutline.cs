using System.Globalization;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;

namespace FleetTrend.Reports.Pictures;

/// <summary>
/// The locations of a type group as SVG: a box per sub-assembly, cylinders above what they lead to, and in it a spot per place as large as its count.
/// Drawn from paths alone, so that a layout of an operator's own is drawn too. A schema, never to scale.
/// </summary>
public static class SystemOutline
{
    private const int Width = 720;
    private const int Gap = 10;
    private const int Head = 22;
    private const int PlaceHeight = 20;
    private const int PipeHeight = 18;
    private const double LargestSpot = 8;

    /// <summary>What the picture shows, for the line below.</summary>
    public const string Legend = "A box is a sub-assembly, a spot a place in it: the larger, the more were found, and the number says how many. A ring: none. Not to scale.";

    /// <summary>Draws it; null where there is no place.</summary>
    /// <param name="title">What is counted, for those who cannot see it.</param>
    /// <param name="spots">Places in the order of the layout: path, count and the page to which each leads.</param>
    public static string? Draw(string title, IReadOnlyList<OutlineSpot> spots)
    {
        ArgumentNullException.ThrowIfNull(spots);
        if (spots.Count == 0)
            return null;
        var most = Math.Max(1, spots.Max(s => s.Count));
        var systems = spots.GroupBy(s => Part(s.Path, 0), StringComparer.Ordinal).Select(g => new Row(g.Key, [.. g])).ToList();
        var svg = new HtmlWriter();
        svg.Open("svg", "ft-outline", ("viewBox", $"0 0 {Width} {systems.Sum(s => s.Height)}"), ("role", "group"), ("aria-labelledby", "ft-outline-title"));
        svg.Element("title", "", title, ("id", "ft-outline-title"));
        var top = 0;
        foreach (var system in systems)
        {
            System(svg, system, top, most);
            top += system.Height;
        }

        return svg.Close("svg").ToString();
    }

    private static void System(HtmlWriter svg, Row system, int top, int most)
    {
        svg.Element("text", "ft-number", FirstLetter.Capital(system.Name), ("x", "0"), ("y", $"{top + 14}"));
        top += Head;
        var under = top + system.CylinderHeight;
        if (system.Cylinders.Count > 0 && system.Others.Count > 0)
        {
            var trunk = under + (PipeHeight / 2);
            foreach (var x in Middles(system.Cylinders.Count)) Pipe(svg, x, under, x, trunk);
            foreach (var x in Middles(system.Others.Count)) Pipe(svg, x, trunk, x, under + PipeHeight);
            double[] ends = [.. Middles(system.Cylinders.Count), .. Middles(system.Others.Count)];
            Pipe(svg, ends.Min(), trunk, ends.Max(), trunk);
        }

        Boxes(svg, system.Cylinders, top, most);
        Boxes(svg, system.Others, under + (system.Cylinders.Count > 0 ? PipeHeight : 0), most);
    }

    private static void Boxes(HtmlWriter svg, IReadOnlyList<Box> boxes, int top, int most)
    {
        if (boxes.Count == 0)
            return;
        var width = (Width - ((boxes.Count - 1) * Gap)) / (double)boxes.Count;
        foreach (var (i, box) in boxes.Index())
        {
            var left = i * (width + Gap);
            svg.Open("rect", "ft-box", ("x", Number(left + 0.5)), ("y", $"{top}"), ("width", Number(width - 1)), ("height", $"{box.Height}"), ("rx", "5")).Close("rect");
            svg.Element("text", "ft-number", FirstLetter.Capital(LocationWords.SubAssembly(box.Spots[0].Path)), ("x", Number(left + 8)), ("y", $"{top + 15}"));
            foreach (var (row, spot) in box.Spots.Index())
                Spot(svg, spot, left, top + Head + (row * PlaceHeight) + (PlaceHeight / 2), most);
        }
    }

    private static void Spot(HtmlWriter svg, OutlineSpot spot, double left, int y, int most)
    {
        svg.Open("a", "", ("href", spot.Page.ToString()), ("aria-label", Label(spot)));
        var radius = spot.Count == 0 ? 3 : Math.Max(3, LargestSpot * Math.Sqrt(spot.Count / (double)most));
        svg.Open("circle", spot.Count == 0 ? "ft-none" : "ft-spot", ("cx", Number(left + 15)), ("cy", $"{y}"), ("r", Number(radius))).Close("circle");
        svg.Open("text", "", ("x", Number(left + 27)), ("y", $"{y + 4}"));
        if (spot.Count > 0)
            svg.Element("tspan", "ft-number", NumberWords.Count(spot.Count)).Text(" ");
        svg.Text(LocationWords.Place(spot.Path)).Close("text");
        svg.Close("a");
    }

    /// <summary>Begins with what is seen, so that who speaks to the browser can name it.</summary>
    private static string Label(OutlineSpot spot) =>
        $"{(spot.Count > 0 ? NumberWords.Count(spot.Count) + " " : "")}{LocationWords.Place(spot.Path)}: {LocationWords.SubAssembly(spot.Path)}{(spot.Count > 0 ? "" : ", none")}";

    private static void Pipe(HtmlWriter svg, double x1, int y1, double x2, int y2) =>
        svg.Open("line", "ft-pipe", ("x1", Number(x1)), ("y1", $"{y1}"), ("x2", Number(x2)), ("y2", $"{y2}")).Close("line");

    private static IEnumerable<double> Middles(int boxes) =>
        Enumerable.Range(0, boxes).Select(i => (i + 0.5) * ((Width - ((boxes - 1) * Gap)) / (double)boxes) + (i * Gap));

    private static string Part(string path, int index) => path.Split('/') is var parts && index < parts.Length ? parts[index] : "";

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>One system: its cylinders, and what they lead to.</summary>
    private sealed class Row
    {
        public Row(string name, List<OutlineSpot> spots)
        {
            Name = name;
            List<Box> boxes = [.. spots.GroupBy(s => Part(s.Path, 1), StringComparer.Ordinal).Select(g => new Box(g.Key, [.. g]))];
            Cylinders = [.. boxes.Where(b => b.Name.StartsWith("cyl-", StringComparison.Ordinal))];
            Others = [.. boxes.Except(Cylinders)];
        }

        public string Name { get; }

        public IReadOnlyList<Box> Cylinders { get; }

        public IReadOnlyList<Box> Others { get; }

        public int CylinderHeight => Cylinders.Select(b => b.Height).DefaultIfEmpty(0).Max();

        public int Height =>
            Head + CylinderHeight + (Cylinders.Count > 0 && Others.Count > 0 ? PipeHeight : 0) + Others.Select(b => b.Height).DefaultIfEmpty(0).Max() + Gap;
    }

    private sealed record Box(string Name, IReadOnlyList<OutlineSpot> Spots)
    {
        public int Height => Head + (Spots.Count * PlaceHeight) + 4;
    }
}
