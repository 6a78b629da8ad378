using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Laplace's trend test of one unit divided by the spread of its gaps: it asks whether the gaps between events have a trend, whatever their
/// distribution, where Laplace's own asks whether they come from a constant rate.
/// </summary>
public static class LewisRobinsonTest
{
    /// <summary>The test on one unit watched from age zero.</summary>
    /// <param name="eventTimes">Ages of the events, hours, above zero and not above the end.</param>
    /// <param name="end">End of observation, hours.</param>
    /// <returns>
    /// The test, near standard normal for many events; <see cref="NotEstimableKind.TooFewEvents"/> below three events,
    /// <see cref="NotEstimableKind.NoInformation"/> where all gaps are equal.
    /// </returns>
    /// <exception cref="ArgumentException">An event outside (0, end].</exception>
    /// <remarks>Source: Lewis and Robinson 1974; Ascher and Feingold 1984 (from memory): Laplace's statistic times mean gap over standard deviation.</remarks>
    public static Outcome<TrendTest> Test(IReadOnlyList<double> eventTimes, double end)
    {
        var unit = new RecurrenceUnit(0, end, eventTimes);
        var times = unit.EventTimes;
        if (times.Count < 3)
            return new NotEstimable(NotEstimableKind.TooFewEvents, times.Count, "The test needs three events.");
        double[] gaps = [.. times.Select((t, i) => t - (i == 0 ? 0 : times[i - 1]))];
        var mean = gaps.Average();
        var spread = Math.Sqrt(gaps.Sum(g => (g - mean) * (g - mean)) / (gaps.Length - 1));
        if (!(spread > 1e-12 * mean))
            return new NotEstimable(NotEstimableKind.NoInformation, times.Count, "All gaps are equal: they have no spread to judge by.");
        return LaplaceTest.Test([unit]).Then<TrendTest>(laplace =>
        {
            var z = laplace.Statistic * mean / spread;
            return new TrendTest(z, times.Count, Tail(z), Tail(-z));
        });
    }

    private static double Tail(double z) => SpecialFunctions.Erfc(z / Math.Sqrt(2)) / 2;
}
