using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace FleetTrend.Reports.Plots;

/// <summary>Levels of aircraft, times the norm, on a logarithmic axis with intervals.</summary>
public sealed class LevelPlot : ReportPlot
{
    private static readonly double[] Marks = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
    private readonly IReadOnlyList<LevelDot> dots;

    /// <summary>Makes the plot.</summary>
    /// <param name="name">Short name, unique in the report.</param>
    /// <param name="altText">What it shows, in words.</param>
    /// <param name="caption">The line below it.</param>
    /// <param name="dots">The rows from the top; one at least.</param>
    public LevelPlot(string name, string altText, string caption, IReadOnlyList<LevelDot> dots)
        : base(name, altText, caption) => this.dots = dots;

    /// <inheritdoc/>
    public override int Height => 80 + (22 * dots.Count);

    internal override Plot Draw()
    {
        var plot = PlotStyle.Blank("Times the norm (1 = as the others)", string.Empty);
        var left = Floor(dots.Select(d => d.Lower is > 0 ? d.Lower.Value : d.Ratio).DefaultIfEmpty(0.5).Min());
        var right = Ceiling(dots.Select(d => d.Upper is { } u && double.IsFinite(u) ? u : d.Ratio).DefaultIfEmpty(2).Max());
        plot.Add.VerticalLine(0, 1.5f, PlotStyle.Ink);
        for (var i = 0; i < dots.Count; i++) DrawDot(plot, dots[i], -i, left, right);

        var ticks = Marks.Where(m => m >= left * 0.999 && m <= right * 1.001).ToArray();
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            ticks.Select(Math.Log10).ToArray(), ticks.Select(m => m.ToString(CultureInfo.InvariantCulture)).ToArray());
        plot.Axes.Left.TickGenerator = new NumericManual(
            dots.Select((_, i) => -(double)i).ToArray(), dots.Select(d => d.Label).ToArray());
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.Axes.SetLimits(Math.Log10(left) - 0.03, Math.Log10(right) + 0.03, -dots.Count + 0.4, 0.6);
        return plot;
    }

    private static void DrawDot(Plot plot, LevelDot dot, double row, double left, double right)
    {
        var color = dot.IsFlagged ? PlotStyle.Series[1] : PlotStyle.Quiet;
        var lower = Math.Log10(Math.Max(left, dot.Lower ?? left));
        var upper = Math.Log10(Math.Min(right, dot.Upper is { } u && double.IsFinite(u) ? u : right));
        var bar = plot.Add.Line(lower, row, upper, row);
        bar.LineColor = color;
        bar.LineWidth = dot.IsFlagged ? 3 : 1.5f;
        bar.MarkerSize = 0;
        var marker = plot.Add.Marker(Math.Log10(Math.Max(left, dot.Ratio)), row);
        marker.MarkerShape = dot.IsFlagged ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle;
        marker.MarkerSize = dot.IsFlagged ? 12 : 7;
        marker.MarkerColor = color;
        marker.MarkerLineColor = color;
    }

    private static double Floor(double value) => Marks.Where(m => m <= value && m <= 0.5).DefaultIfEmpty(Marks[0]).Max();

    private static double Ceiling(double value) => Marks.Where(m => m >= value && m >= 2).DefaultIfEmpty(Marks[^1]).Min();
}
