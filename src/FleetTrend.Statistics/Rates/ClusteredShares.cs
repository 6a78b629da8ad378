using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Shares of few things on units (aircraft) that may differ, without any model: what is on one unit is taken to be as alike as can be, so that so many things
/// tell as much as their effective number, the squared sum over the sum of squares.
/// </summary>
/// <remarks>Source: effective number, Kish 1965; exact limits on it, Korn and Graubard 1998, Survey Methodology 24; Clopper and Pearson 1934; Fisher
/// 1935.</remarks>
public static class ClusteredShares
{
    /// <summary>The share with its limits; the reason where nothing was looked at.</summary>
    /// <param name="units">Counts of the units.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<IntervalEstimate> Estimate(IReadOnlyList<ClusterCount> units, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var (events, others) = Effective(units);
        if (events + others == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "Nothing was looked at.");
        var tail = (1 - confidence) / 2;
        var lower = events == 0 ? 0 : Share(Quantile.BetaOdds(tail, events, others + 1));
        var upper = others == 0 ? 1 : Share(Quantile.BetaOdds(1 - tail, events + 1, others));
        return new IntervalEstimate(events / (events + others), new Interval(lower, upper, confidence));
    }

    /// <summary>Whether two sets of things have one share: twice the smaller tail of Fisher's exact test on effective numbers, rounded down.</summary>
    /// <param name="first">Counts of the units of the first set.</param>
    /// <param name="second">Counts of the units of the second set.</param>
    /// <returns>The p-value, and the smallest one that so many could give (Tarone 1990); the reason where a set is empty or nothing had it.</returns>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<(double PValue, double SmallestPValue)> Compare(IReadOnlyList<ClusterCount> first, IReadOnlyList<ClusterCount> second)
    {
        var (a, b) = Rounded(first);
        var (c, d) = Rounded(second);
        if (a + b == 0 || c + d == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "Nothing was looked at in one of the sets.");
        if (a + c == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "Nothing had it in either set.");
        var law = new Hypergeometric(a + b + c + d, a + c, a + b);
        return (Tails(a), Math.Min(Tails(Math.Max(0, a + c - (c + d))), Tails(Math.Min(a + c, a + b))));

        double Tails(int events) => Math.Min(1, 2 * Math.Min(law.CumulativeDistribution(events), 1 - law.CumulativeDistribution(events - 1)));
    }

    private static (double Events, double Others) Effective(IReadOnlyList<ClusterCount> units)
    {
        ArgumentNullException.ThrowIfNull(units);
        double trials = units.Sum(u => u.Trials);
        if (trials == 0)
            return (0, 0);
        var each = trials / units.Sum(u => (double)u.Trials * u.Trials);
        var events = units.Sum(u => u.Events);
        return (events * each, (trials - events) * each);
    }

    private static (int Events, int Others) Rounded(IReadOnlyList<ClusterCount> units)
    {
        var (events, others) = Effective(units);
        return ((int)Math.Floor(events + 1e-9), (int)Math.Floor(others + 1e-9));
    }

    private static double Share(double odds) => odds / (1 + odds);
}
