using System.Globalization;
using FleetTrend.Records.Words;
using FleetTrend.Trends.BackTests;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace FleetTrend.Reports.Plots;

/// <summary>When each method would have called: a row per method, a mark per month with calls, the larger the more.</summary>
public sealed class BackTestPlot : ReportPlot
{
    private const double LargestMark = 15;
    private const double SmallestMark = 4;
    private const int MostTicks = 10;
    private readonly BackTest test;

    /// <summary>Makes the plot.</summary>
    /// <param name="test">The back-test.</param>
    public BackTestPlot(BackTest test)
        : base(
            "back-test",
            "When each method would have called, a row per method and a mark per month with calls. "
                + string.Join("; ", (test ?? throw new ArgumentNullException(nameof(test))).Methods.Select(m => $"{m.Title}: {NumberWords.Count(m.Calls, "call", "calls")}")) + ".",
            $"Calls by month on {test.TypeGroup}, {NumberWords.Period(test.FirstDate, test.LastDate)}; the larger a mark, the more calls. Beside each method its calls per 50 "
                + "aircraft-years.") =>
        this.test = test;

    /// <inheritdoc/>
    public override int Height => 90 + (22 * test.Methods.Count);

    internal override Plot Draw()
    {
        var plot = PlotStyle.Blank("Month of the call", string.Empty);
        var months = test.Methods.Max(m => m.CallsByMonth.Count);
        var most = Math.Max(1, test.Methods.Max(m => m.CallsByMonth.Max()));
        foreach (var (row, method) in test.Methods.Index())
        {
            foreach (var (month, calls) in method.CallsByMonth.Index())
            {
                if (calls == 0)
                    continue;
                var isOurs = method.AlsoWatchedOrFlagged is null;
                var mark = plot.Add.Marker(month + 0.5, -row);
                mark.MarkerShape = isOurs ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle;
                mark.MarkerSize = (float)Math.Max(SmallestMark, LargestMark * Math.Sqrt(calls / (double)most));
                mark.MarkerColor = isOurs ? PlotStyle.Series[1] : PlotStyle.Quiet;
                mark.MarkerLineColor = mark.MarkerColor;
            }
        }

        var every = Math.Max(1, (int)Math.Ceiling(months / (double)MostTicks));
        var ticks = Enumerable.Range(0, months).Where(m => m % every == 0).ToArray();
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            ticks.Select(m => m + 0.5).ToArray(), ticks.Select(m => test.FirstDate.AddMonths(m).ToString("MMM yy", CultureInfo.InvariantCulture)).ToArray());
        plot.Axes.Left.TickGenerator = new NumericManual(
            test.Methods.Select((_, i) => -(double)i).ToArray(),
            test.Methods.Select(m => $"{m.Title} ({BackTestWords.Per50(m.Per50AircraftYears)})").ToArray());
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.Axes.SetLimits(0, months, -test.Methods.Count + 0.4, 0.6);
        return plot;
    }
}
