using FleetTrend.Trends.RecurrenceContrasts;
using FleetTrend.Trends.Recurrences;
using ScottPlot;

namespace FleetTrend.Reports.Plots;

/// <summary>
/// Mean cumulative number of events per aircraft at one location, with its band, and beside it the count of one aircraft that departs.
/// Every line is drawn over watched hours only: it starts with the watch, leaves gaps open and ends with the last look.
/// </summary>
public sealed class RecurrencePlot : ReportPlot
{
    private readonly IReadOnlyList<MeanCumulativePoint> points;
    private readonly IReadOnlyList<WatchedSpan> watched;
    private readonly string meanLabel;
    private readonly RecurrenceContrast? departing;

    /// <summary>Makes the plot of all aircraft of a type group.</summary>
    /// <param name="name">Short name, unique in the report.</param>
    /// <param name="altText">What it shows, in words.</param>
    /// <param name="caption">The line below it.</param>
    /// <param name="trend">The fleet's mean function; at least one point.</param>
    public RecurrencePlot(string name, string altText, string caption, RecurrenceTrend trend)
        : base(name, altText, caption)
    {
        ArgumentNullException.ThrowIfNull(trend);
        points = trend.Points;
        watched = trend.Watched ?? [new WatchedSpan(points[0].Hours, points[^1].Hours)];
        meanLabel = "mean of all";
    }

    /// <summary>Makes the plot of one aircraft beside the mean of the others.</summary>
    /// <param name="name">Short name, unique in the report.</param>
    /// <param name="altText">What it shows, in words.</param>
    /// <param name="caption">The line below it.</param>
    /// <param name="contrast">The aircraft and the others; at least one other.</param>
    public RecurrencePlot(string name, string altText, string caption, RecurrenceContrast contrast)
        : base(name, altText, caption)
    {
        ArgumentNullException.ThrowIfNull(contrast);
        points = contrast.Others;
        watched = contrast.OthersWatched;
        meanLabel = "mean of the others";
        departing = contrast;
    }

    /// <inheritdoc/>
    public override int Height => 340;

    internal override Plot Draw()
    {
        var plot = PlotStyle.Blank("Time in service, h", "Number per aircraft");
        DrawMean(plot);
        DrawDeparting(plot);
        var all = watched.Concat(departing?.Watched ?? []).ToList();
        var (start, end) = (all.Min(w => w.FromHours), all.Max(w => w.ToHours));
        var margin = 0.03 * Math.Max(10, end - start);
        plot.Axes.SetLimitsX(Math.Max(0, start - margin), end + margin);
        plot.Axes.SetLimitsY(0, Top() * 1.12);
        PlotStyle.LegendAbove(plot);
        return plot;
    }

    private void DrawMean(Plot plot)
    {
        var value = points.Select(p => (p.Hours, p.Value)).ToList();
        var lower = points.Select(p => (p.Hours, Math.Max(0, p.Lower))).ToList();
        var upper = points.Select(p => (p.Hours, Finite(p))).ToList();
        foreach (var (i, span) in watched.Index())
        {
            if (points.Count > 0)
            {
                var (xs, low) = Steps(lower, span);
                var band = plot.Add.FillY(xs, low, Steps(upper, span).Ys);
                band.FillColor = PlotStyle.Series[0].WithAlpha(0.16);
                band.LineWidth = 0;
                band.MarkerSize = 0;
                band.LegendText = i == 0 ? "interval of the mean" : string.Empty;
            }

            AddLine(plot, Steps(value, span), PlotStyle.Series[0], i == 0 ? meanLabel : string.Empty);
        }
    }

    private void DrawDeparting(Plot plot)
    {
        if (departing is null) return;
        var counts = departing.FoundHours.Select((hours, i) => (Hours: hours, Value: i + 1.0)).ToList();
        foreach (var (i, span) in departing.Watched.Index())
        {
            var (xs, ys) = Steps(counts, span);
            // Of the points of a step, the one after it is the event.
            PlotStyle.MarkedLine(
                plot, xs, ys, at => at > 0 && ys[at] > ys[at - 1], PlotStyle.Series[1], MarkerShape.FilledCircle,
                i == 0 ? $"{departing.Registration} alone" : string.Empty);
        }
    }

    private static void AddLine(Plot plot, (double[] Xs, double[] Ys) steps, Color color, string legend)
    {
        var line = plot.Add.ScatterLine(steps.Xs, steps.Ys, color);
        line.LineWidth = 2;
        line.LegendText = legend;
    }

    private double Top() => Math.Max(
        Math.Max(points.Select(Finite).DefaultIfEmpty(0).Max(), departing?.FoundHours.Count ?? 0),
        0.1);

    private static double Finite(MeanCumulativePoint point) => double.IsFinite(point.Upper) ? point.Upper : point.Value;

    /// <summary>The steps within a span, from the value in force at its start; nothing is drawn outside.</summary>
    private static (double[] Xs, double[] Ys) Steps(IReadOnlyList<(double Hours, double Value)> points, WatchedSpan span)
    {
        List<double> xs = [span.FromHours];
        List<double> ys = [points.LastOrDefault(p => p.Hours <= span.FromHours).Value];
        foreach (var (hours, value) in points.Where(p => p.Hours > span.FromHours && p.Hours <= span.ToHours))
        {
            xs.AddRange([hours, hours]);
            ys.AddRange([ys[^1], value]);
        }

        xs.Add(span.ToHours);
        ys.Add(ys[^1]);
        return ([.. xs], [.. ys]);
    }
}
