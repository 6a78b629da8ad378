using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Laplace's trend test: under a constant rate the events of a window lie evenly in it, whatever the rate, so the mean
/// age of the events should be the windows' middle. The statistic is near standard normal; above zero speaks for a
/// rising rate. Units may have different rates.
/// </summary>
public static class LaplaceTest
{
    /// <summary>The test on exact event ages, over all windows of all units.</summary>
    /// <param name="units">The units.</param>
    /// <param name="truncation">With <see cref="Truncation.Event"/> each unit's last event ends its last window and is left out.</param>
    /// <returns>The test, or the reason why there is none.</returns>
    /// <remarks>Source: Cox and Lewis 1966; NIST/SEMATECH e-Handbook 8.2.3.4; sum over windows as in Ascher and Feingold 1984 (from memory).</remarks>
    public static Outcome<TrendTest> Test(IReadOnlyList<RecurrenceUnit> units, Truncation truncation = Truncation.Time)
    {
        var (count, excess, variance) = (0L, 0.0, 0.0);
        foreach (var unit in units)
        {
            var events = unit.EventSpan;
            if (truncation == Truncation.Event && events.Length > 0)
                events = events[..^1];
            var windows = unit.WindowSpan;
            var at = 0;
            foreach (var time in events)
            {
                while (!windows[at].Contains(time))
                    at++;
                var stop = truncation == Truncation.Event && at == windows.Length - 1 ? unit.EventSpan[^1] : windows[at].Stop;
                var length = stop - windows[at].Start;
                count++;
                excess += time - (windows[at].Start + stop) / 2;
                variance += length * length / 12;
            }
        }
        return Result(count, excess, variance);
    }

    /// <summary>The test where only counts between looks are known: an event counts at the middle of its span.</summary>
    /// <param name="units">One list of adjoining spans per unit.</param>
    /// <returns>The test, or the reason why there is none (no event, or every unit with one span only).</returns>
    /// <remarks>
    /// Source: the score test of a log-linear trend on grouped counts, Cox and Lewis 1966 (from memory): given a unit's
    /// total, spans share its events in proportion to their hours.
    /// </remarks>
    public static Outcome<TrendTest> TestCounts(IReadOnlyList<IReadOnlyList<CountInterval>> units)
    {
        var (count, excess, variance) = (0L, 0.0, 0.0);
        foreach (var spans in units)
        {
            if (spans.Count == 0)
                continue;
            var hours = spans.Sum(s => s.Stop - s.Start);
            var mean = spans.Sum(s => (s.Stop - s.Start) * (s.Start + s.Stop) / 2) / hours;
            var spread = spans.Sum(s => (s.Stop - s.Start) * Math.Pow((s.Start + s.Stop) / 2 - mean, 2)) / hours;
            var events = spans.Sum(s => (long)s.Events);
            count += events;
            excess += spans.Sum(s => s.Events * ((s.Start + s.Stop) / 2 - mean));
            variance += events * spread;
        }
        return Result(count, excess, variance);
    }

    private static Outcome<TrendTest> Result(long count, double excess, double variance)
    {
        if (count == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No event: nothing to see a trend in.");
        if (variance <= 0)
            return new NotEstimable(NotEstimableKind.NoInformation, count, "Every unit has one span only: its events cannot move.");
        var z = excess / Math.Sqrt(variance);
        return new TrendTest(z, count, Tail(z), Tail(-z));
    }

    private static double Tail(double z) => SpecialFunctions.Erfc(z / Math.Sqrt(2)) / 2;
}
