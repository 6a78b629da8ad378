using FleetTrend.Reports.Fonts;
using ScottPlot;

namespace FleetTrend.Cli.Analysis;

/// <summary>The parts that the three plots share.</summary>
internal static class AnalysisPlot
{
    /// <summary>An empty plot with words.</summary>
    public static Plot New(string title, string x, string y)
    {
        ShippedFonts.Ensure();
        var plot = new Plot();
        plot.Font.Set(ShippedFonts.Family);
        plot.Title(title);
        plot.XLabel(x);
        plot.YLabel(y);
        return plot;
    }

    /// <summary>A level line from one value to another.</summary>
    public static void Segment(Plot plot, double from, double to, double y)
    {
        var line = plot.Add.Line(from, y, to, y);
        line.LineWidth = 2;
        line.LineColor = Colors.Black;
    }

    /// <summary>A rising step function from (0, 0).</summary>
    public static void Steps(Plot plot, IReadOnlyList<(double X, double Y)> points, double end, Color color, float width, string legend)
    {
        var (xs, ys) = (new List<double> { 0 }, new List<double> { 0 });
        foreach (var (x, y) in points)
        {
            xs.AddRange([x, x]);
            ys.AddRange([ys[^1], y]);
        }
        xs.Add(end);
        ys.Add(ys[^1]);
        Curve(plot, [.. xs], [.. ys], color, width, legend);
    }

    /// <summary>A line through points, without marks.</summary>
    public static void Curve(Plot plot, double[] xs, double[] ys, Color color, float width, string legend)
    {
        var line = plot.Add.ScatterLine(xs, ys);
        line.LineWidth = width;
        line.LineColor = color;
        line.LegendText = legend;
    }

    /// <summary>Names on the vertical axis, the first one on top; at most forty, evenly taken.</summary>
    public static void Labels(Plot plot, string[] names)
    {
        var every = Math.Max(1, (int)Math.Ceiling(names.Length / 40.0));
        var shown = Enumerable.Range(0, names.Length).Where(i => i % every == 0).ToArray();
        plot.Axes.Left.SetTicks([.. shown.Select(i => (double)(names.Length - i))], [.. shown.Select(i => names[i])]);
    }
}
