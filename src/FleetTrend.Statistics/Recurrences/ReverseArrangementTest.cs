using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// The reverse-arrangement test of one unit: a pair of gaps between events of which the later is longer is a reversal;
/// many reversals speak for improvement. It asks nothing of the gaps' distribution.
/// </summary>
public sealed record ReverseArrangementTest
{
    private ReverseArrangementTest(int events, int reversals, double exact)
    {
        Events = events;
        Reversals = reversals;
        ExactImprovingPValue = exact;
    }

    /// <summary>Events, and so gaps.</summary>
    public int Events { get; }

    /// <summary>Pairs of gaps of which the later is longer; equal gaps are no reversal.</summary>
    public int Reversals { get; }

    /// <summary>Chance, all orders of the gaps being equally likely, of at least as many reversals.</summary>
    public double ExactImprovingPValue { get; }

    /// <summary>Pairs of gaps: as many reversals as there can be.</summary>
    public int MostReversals => Events * (Events - 1) / 2;

    /// <summary>Mean number of reversals, all orders of the gaps being equally likely.</summary>
    public double ExpectedReversals => MostReversals / 2.0;

    /// <summary>Variance of the number of reversals, all orders being equally likely.</summary>
    public double ReversalVariance => (2.0 * Events + 5) * (Events - 1) * Events / 72;

    /// <summary>Standardised reversals with the handbook's correction of one half.</summary>
    public double Statistic => (Reversals - ExpectedReversals + 0.5) / Math.Sqrt(ReversalVariance);

    /// <summary>Chance of at least this statistic by the normal distribution, for many events.</summary>
    public double NormalImprovingPValue => SpecialFunctions.Erfc(Statistic / Math.Sqrt(2)) / 2;

    /// <summary>The test on one unit's event ages.</summary>
    /// <param name="eventTimes">Ages of the events, hours, in ascending order, counted from a start at zero.</param>
    /// <returns>The test, or <see cref="NotEstimableKind.TooFewEvents"/> below four events.</returns>
    /// <exception cref="ArgumentException">The ages do not ascend.</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 8.2.3.4; exact distribution by counting permutations by inversions.</remarks>
    public static Outcome<ReverseArrangementTest> Test(IReadOnlyList<double> eventTimes)
    {
        if (eventTimes.Count < 4)
            return new NotEstimable(NotEstimableKind.TooFewEvents, eventTimes.Count, "The reverse-arrangement test needs four events.");
        var gaps = new double[eventTimes.Count];
        for (var i = 0; i < gaps.Length; i++)
        {
            gaps[i] = eventTimes[i] - (i == 0 ? 0 : eventTimes[i - 1]);
            if (gaps[i] < 0)
                throw new ArgumentException("Event ages ascend.", nameof(eventTimes));
        }
        var reversals = 0;
        for (var i = 0; i < gaps.Length; i++)
        {
            for (var j = i + 1; j < gaps.Length; j++)
            {
                if (gaps[i] < gaps[j])
                    reversals++;
            }
        }
        return new ReverseArrangementTest(gaps.Length, reversals, AtLeast(reversals, gaps.Length));
    }

    /// <summary>The k-th gap adds 0 to k - 1 reversals, each equally likely and independent of the others.</summary>
    private static double AtLeast(int reversals, int gaps)
    {
        double[] distribution = [1];
        for (var k = 2; k <= gaps; k++)
        {
            var next = new double[distribution.Length + k - 1];
            var window = 0.0;
            for (var r = 0; r < next.Length; r++)
            {
                window += r < distribution.Length ? distribution[r] : 0;
                window -= r >= k ? distribution[r - k] : 0;
                next[r] = window / k;
            }
            distribution = next;
        }
        return Math.Clamp(distribution.Skip(reversals).Sum(), 0, 1);
    }
}
