using ScottPlot;

namespace FleetTrend.Reports.Plots;

/// <summary>
/// Share of parts failed by hours on the part: steps as the looks show them, and the fitted curve, for several bases. Each ends
/// at the oldest age at which a life was followed.
/// </summary>
public sealed class PartLifePlot : ReportPlot
{
    private const int CurvePoints = 120;
    private readonly IReadOnlyList<LifeCurve> curves;

    /// <summary>Makes the plot.</summary>
    /// <param name="name">Short name, unique in the report.</param>
    /// <param name="altText">What it shows, in words.</param>
    /// <param name="caption">The line below it.</param>
    /// <param name="curves">The curves; one at least, each with a step or a fit.</param>
    public PartLifePlot(string name, string altText, string caption, IReadOnlyList<LifeCurve> curves)
        : base(name, altText, caption) => this.curves = curves;

    /// <inheritdoc/>
    public override int Height => 360;

    internal override Plot Draw()
    {
        var plot = PlotStyle.Blank("Hours on the part", "Share failed, %");
        var end = curves.Max(c => c.ToHours);
        for (var i = 0; i < curves.Count; i++)
        {
            var color = PlotStyle.Series[i % PlotStyle.Series.Length];
            DrawSteps(plot, curves[i], color);
            DrawFit(plot, curves[i], color, PlotStyle.Marks[i % PlotStyle.Marks.Length]);
        }

        plot.Axes.SetLimitsX(0, end * 1.04);
        plot.Axes.SetLimitsY(0, 104);
        PlotStyle.LegendAbove(plot);
        return plot;
    }

    // Between the ends of a step the data do not say where the failures were: a thin slope; elsewhere the share is known: a bar.
    private static void DrawSteps(Plot plot, LifeCurve curve, Color color)
    {
        var (lastUpper, lastShare) = (curve.FromHours, 0.0);
        foreach (var step in curve.Steps)
        {
            Segment(plot, lastUpper, lastShare, step.Lower, lastShare, color, 3);
            if (step.Upper is not { } upper) return;
            Segment(plot, step.Lower, lastShare, upper, step.Cdf * 100, color, 0.8f);
            (lastUpper, lastShare) = (upper, step.Cdf * 100);
        }
    }

    // Over the ages at which lives were followed: beyond them the fit is a guess that no part has borne out.
    private static void DrawFit(Plot plot, LifeCurve curve, Color color, MarkerShape mark)
    {
        if (curve.Fit?.ShareFailedBy(0) is null)
        {
            plot.Legend.ManualItems.Add(new LegendItem { LabelText = curve.Label, LineColor = color, LineWidth = 3 });
            return;
        }

        var span = curve.ToHours - curve.FromHours;
        var xs = Enumerable.Range(0, CurvePoints + 1).Select(i => curve.FromHours + (span * i / CurvePoints)).ToArray();
        var ys = xs.Select(x => 100 * (curve.Fit.ShareFailedBy(x) ?? 0)).ToArray();
        PlotStyle.MarkedLine(plot, xs, ys, i => i % (CurvePoints / 8) == CurvePoints / 16, color, mark, curve.Label);
    }

    private static void Segment(Plot plot, double x1, double y1, double x2, double y2, Color color, float width)
    {
        if (x2 <= x1) return;
        var line = plot.Add.Line(x1, y1, x2, y2);
        line.LineColor = color.WithAlpha(width > 1 ? 0.75 : 0.55);
        line.LineWidth = width;
        line.MarkerSize = 0;
    }
}
