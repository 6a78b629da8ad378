using FleetTrend.Reports.Fonts;
using ScottPlot;

namespace FleetTrend.Reports.Plots;

/// <summary>The common look of the plots: dark on white, told apart by marks as well as by colour.</summary>
internal static class PlotStyle
{
    public static readonly Color Ink = Color.FromHex("#1f2933");
    public static readonly Color Quiet = Color.FromHex("#5b6670");
    public static readonly Color Rule = Color.FromHex("#d9dee3");

    /// <summary>Colours that stay apart for colour-blind readers (Okabe and Ito 2008) and differ in lightness for black-and-white print.</summary>
    public static readonly Color[] Series =
    [
        Color.FromHex("#0072b2"), Color.FromHex("#d55e00"), Color.FromHex("#111111"), Color.FromHex("#009e73"), Color.FromHex("#7a4b8a"),
    ];

    /// <summary>Marks that tell the curves apart without colour. Not dashes: a vector drawing loses them, and the library says so on the console.</summary>
    public static readonly MarkerShape[] Marks =
        [MarkerShape.None, MarkerShape.OpenCircle, MarkerShape.OpenSquare, MarkerShape.OpenTriangleUp, MarkerShape.OpenDiamond];

    private const int MarkSize = 8;

    public static Plot Blank(string xLabel, string yLabel)
    {
        var plot = new Plot();
        plot.Font.Set(ShippedFonts.Family);
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Color(Ink);
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        plot.Grid.MajorLineColor = Rule;
        plot.XLabel(xLabel, 13);
        plot.YLabel(yLabel, 13);
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Left.Label.Bold = false;
        plot.Axes.Bottom.TickLabelStyle.FontSize = 12;
        plot.Axes.Left.TickLabelStyle.FontSize = 12;
        return plot;
    }

    /// <summary>A line with marks at some of its points, and its entry in the legend; an empty one has none.</summary>
    public static void MarkedLine(Plot plot, double[] xs, double[] ys, Func<int, bool> isMarked, Color color, MarkerShape mark, string legend)
    {
        var line = plot.Add.ScatterLine(xs, ys, color);
        line.LineWidth = 2;
        var marked = Enumerable.Range(0, xs.Length).Where(isMarked).ToArray();
        var marks = plot.Add.ScatterPoints(marked.Select(i => xs[i]).ToArray(), marked.Select(i => ys[i]).ToArray(), color);
        marks.MarkerShape = mark;
        marks.MarkerSize = MarkSize;
        if (legend.Length == 0) return;
        plot.Legend.ManualItems.Add(new LegendItem
        {
            LabelText = legend,
            LineColor = color,
            LineWidth = 2,
            MarkerShape = mark,
            MarkerSize = MarkSize,
            MarkerColor = color,
        });
    }

    /// <summary>The legend above the data, so that it covers none.</summary>
    public static void LegendAbove(Plot plot)
    {
        var legend = plot.Legend;
        legend.FontSize = 12;
        legend.FontName = ShippedFonts.Family;
        legend.FontColor = Ink;
        legend.SymbolWidth = 36;
        legend.OutlineWidth = 0;
        legend.ShadowColor = Colors.Transparent;
        legend.BackgroundColor = Colors.White;
        legend.Orientation = Orientation.Horizontal;
        legend.TightHorizontalWrapping = true;
        plot.ShowLegend(Edge.Top).Padding = new PixelPadding(0, 0, 2, 2);
    }
}
