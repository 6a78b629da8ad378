using FleetTrend.Reports.Plots;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Recurrences;
using ScottPlot;
using ScottPlot.Plottables;
using static FleetTrend.Reports.Tests.InventedFleet;
using PlotStyle = FleetTrend.Reports.Plots.PlotStyle;

namespace FleetTrend.Reports.Tests;

/// <summary>What the plots draw, read from the series that are drawn. Ends are those written in the invented fleet.</summary>
public sealed class PlotDataTests
{
    [Fact] // Watched to 2,040.2 h, the others in two spans: 300 to 2,400 h and 3,000 to 3,600 h.
    public void A_line_is_drawn_over_watched_hours_only_and_ends_with_the_last_look()
    {
        using var plot = new RecurrencePlot("n", "a", "c", Contrast()).Draw();
        var own = Assert.Single(Lines(plot), l => l.LineColor == PlotStyle.Series[1]);
        Assert.Equal((1400, 2040.2), Ends(own));
        Assert.Contains(plot.Legend.ManualItems, i => i.LabelText == "ZZ-A07 alone");
        Assert.Equal([0, 0, 1, 1, 2, 2, 3, 3], Points(own).Select(p => p.Y));
        var others = Lines(plot).Where(l => l.LineColor != own.LineColor).ToList();
        Assert.Equal([(300, 2400), (3000, 3600)], others.Select(Ends));
        Assert.Equal("mean of the others", others[0].LegendText);
        Assert.Equal(0.36, Points(others[0])[^1].Y, 12); // four events, 0.09 each
        Assert.Equal([0.36, 0.36], Points(others[1]).Select(p => p.Y), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([(300, 2400), (3000, 3600)], plot.GetPlottables<FillY>().Select(f => (f.GetAxisLimits().Left, f.GetAxisLimits().Right)));
    }

    [Fact]
    public void Without_an_aircraft_beside_it_the_mean_ends_with_the_last_look_of_any()
    {
        var trend = Snapshot().Recurrences[0] with { Watched = [new WatchedSpan(120, 2111)] };
        using var plot = new RecurrencePlot("n", "a", "c", trend).Draw();
        Assert.Equal((120, 2111), Ends(Assert.Single(Lines(plot))));
    }

    [Fact] // Such trends say only where the events were: 905 to 1,958.2 h.
    public void Trends_of_an_earlier_version_are_drawn_from_event_to_event()
    {
        using var plot = new RecurrencePlot("n", "a", "c", Snapshot().Recurrences[0] with { Watched = null }).Draw();
        Assert.Equal((905, 1958.2), Ends(Assert.Single(Lines(plot))));
    }

    [Fact] // Here lives were followed to 640 h, there from 150 to 310 h.
    public void Fitted_curves_and_bars_of_each_base_end_with_its_own_oldest_life()
    {
        LifeStep[] steps = [new(0, 200, 0.2, 0.2), new(640, null, 0.8, 1)];
        LifeStep[] few = [new(180, 310, 1, 1)];
        using var plot = new PartLifePlot("n", "a", "c",
        [
            new LifeCurve("here", steps, Fit("Weibull", 2, 700, 3, 9), 0, 640),
            new LifeCurve("there", few, Fit("Weibull", 2, 300, 3, 9), 150, 310),
        ]).Draw();
        Assert.Equal((0, 640), Ends(Assert.Single(Lines(plot), l => l.LineColor == PlotStyle.Series[0])));
        Assert.Equal((150, 310), Ends(Assert.Single(Lines(plot), l => l.LineColor == PlotStyle.Series[1])));
        // Weibull of shape 2 and scale 700 h at 640 h: 100 (1 - exp(-(640/700)^2)) = 56.65 %.
        Assert.Equal(100 * (1 - Math.Exp(-Math.Pow(640 / 700.0, 2))), Points(Lines(plot).First(l => l.LineColor == PlotStyle.Series[0]))[^1].Y, 9);
        var bars = plot.GetPlottables<LinePlot>().ToList();
        Assert.Equal(640, bars.Max(b => b.End.X));
        var there = bars.Where(b => b.LineColor.WithAlpha(1.0) == bars[^1].LineColor.WithAlpha(1.0)).ToList();
        Assert.Equal((150, 310), (there.Min(b => b.Start.X), there.Max(b => b.End.X)));
    }

    private static IEnumerable<Scatter> Lines(Plot plot) => plot.GetPlottables<Scatter>().Where(s => s.LineWidth > 0);

    private static IReadOnlyList<Coordinates> Points(Scatter line) => line.Data.GetScatterPoints();

    private static (double From, double To) Ends(Scatter line) => (Points(line)[0].X, Points(line)[^1].X);
}
