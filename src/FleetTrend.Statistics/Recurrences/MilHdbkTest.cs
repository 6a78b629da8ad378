using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// The military-handbook trend test: twice the sum of log(end / event age) is chi-square with twice as many degrees of
/// freedom as events under a constant rate; high values speak for a falling rate. It is the most powerful test against a
/// power law, for units watched from age zero without a gap.
/// </summary>
public static class MilHdbkTest
{
    /// <summary>The test over all units.</summary>
    /// <param name="units">The units, each watched from age zero without a gap.</param>
    /// <param name="truncation">With <see cref="Truncation.Event"/> each unit ends at its last event, which is left out.</param>
    /// <returns>The test, or the reason why there is none.</returns>
    /// <remarks>Source: MIL-HDBK-189C; NIST/SEMATECH e-Handbook 8.2.3.4.</remarks>
    public static Outcome<TrendTest> Test(IReadOnlyList<RecurrenceUnit> units, Truncation truncation = Truncation.Time)
    {
        var (count, sum) = (0L, 0.0);
        foreach (var unit in units)
        {
            if (unit.Windows.Count > 1 || unit.Windows.Count == 1 && unit.Windows[0].Start > 0)
            {
                return new NotEstimable(
                    NotEstimableKind.NoInformation, units.Sum(u => (long)u.EventTimes.Count),
                    "Defined only for units watched from age zero without a gap; the Laplace test has no such limit.");
            }
            var events = unit.EventSpan;
            if (events.Length == 0)
                continue;
            var end = truncation == Truncation.Event ? events[^1] : unit.Windows[0].Stop;
            count += truncation == Truncation.Event ? events.Length - 1 : events.Length;
            foreach (var time in events)
                sum += Math.Log(end / time);
        }
        if (count == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No event: nothing to see a trend in.");
        return new TrendTest(
            2 * sum, count, SpecialFunctions.GammaLowerRegularized(count, sum), SpecialFunctions.GammaUpperRegularized(count, sum));
    }
}
