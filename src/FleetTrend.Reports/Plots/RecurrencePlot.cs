using FleetTrend.Trends.Locations;
using ScottPlot;

namespace FleetTrend.Reports.Plots;

/// <summary>Mean cumulative number of events per aircraft at one location, with its band, and the steps of one aircraft that departs.</summary>
public sealed class RecurrencePlot : ReportPlot
{
    private readonly RecurrenceTrend trend;
    private readonly RepeatLocation? departing;

    /// <summary>Makes the plot.</summary>
    /// <param name="name">Short name, unique in the report.</param>
    /// <param name="altText">What it shows, in words.</param>
    /// <param name="caption">The line below it.</param>
    /// <param name="trend">The fleet's mean function; at least one point.</param>
    /// <param name="departing">An aircraft to draw beside it, or null.</param>
    public RecurrencePlot(string name, string altText, string caption, RecurrenceTrend trend, RepeatLocation? departing)
        : base(name, altText, caption)
    {
        this.trend = trend;
        this.departing = departing;
    }

    /// <inheritdoc/>
    public override int Height => 340;

    private protected override Plot Draw()
    {
        var plot = PlotStyle.Blank("Time in service, h", "Number per aircraft");
        var end = Math.Max(
            trend.Points[^1].Hours,
            departing?.Events[^1].FoundHours ?? 0);
        var start = trend.Points[0].Hours - (0.04 * Math.Max(10, end - trend.Points[0].Hours));
        end += 0.03 * (end - start);
        DrawBand(plot, end);
        var (xs, ys) = Steps([.. trend.Points.Select(p => (p.Hours, p.Value))], start, end);
        var mean = plot.Add.ScatterLine(xs, ys, PlotStyle.Series[0]);
        mean.LineWidth = 2;
        mean.LegendText = "mean of its like";
        DrawDeparting(plot, end);
        plot.Axes.SetLimitsX(Math.Max(0, start), end);
        plot.Axes.SetLimitsY(0, Top() * 1.12);
        PlotStyle.LegendAbove(plot);
        return plot;
    }

    private void DrawBand(Plot plot, double end)
    {
        var (xs, lower) = Steps([.. trend.Points.Select(p => (p.Hours, Math.Max(0, p.Lower)))], trend.Points[0].Hours, end);
        var (_, upper) = Steps([.. trend.Points.Select(p => (p.Hours, p.Upper))], trend.Points[0].Hours, end);
        var band = plot.Add.FillY(xs, lower, upper);
        band.FillColor = PlotStyle.Series[0].WithAlpha(0.16);
        band.LineWidth = 0;
        band.MarkerSize = 0;
        band.LegendText = "interval of the mean";
    }

    private void DrawDeparting(Plot plot, double end)
    {
        if (departing is null) return;
        var counts = departing.Events.Select((e, i) => (e.FoundHours, Value: i + 1.0)).ToArray();
        var (xs, ys) = Steps(counts, counts[0].FoundHours, end);
        // Of the points of a step, the one after it is the event.
        PlotStyle.MarkedLine(
            plot, xs, ys, i => i > 0 && ys[i] > ys[i - 1], PlotStyle.Series[1], MarkerShape.FilledCircle, $"{departing.Registration} alone");
    }

    private double Top() => Math.Max(
        trend.Points.Max(p => double.IsFinite(p.Upper) ? p.Upper : p.Value),
        departing?.Events.Count ?? 0);

    private static (double[] Xs, double[] Ys) Steps((double Hours, double Value)[] points, double start, double end)
    {
        List<double> xs = [Math.Max(0, start)];
        List<double> ys = [0];
        foreach (var (hours, value) in points)
        {
            xs.AddRange([hours, hours]);
            ys.AddRange([ys[^1], value]);
        }

        xs.Add(end);
        ys.Add(ys[^1]);
        return ([.. xs], [.. ys]);
    }
}
