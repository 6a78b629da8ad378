using MathNet.Numerics;

namespace FleetTrend.Statistics.Lives;

/// <summary>Early failures of two sets of units against each other.</summary>
/// <remarks>
/// Given their sum, the failures of the first set are binomial; counts are divided by the dispersion between units where that is above 1.
/// Half of the chance of the count itself counts as beyond it (mid-P), for the test and for the interval, so that both always agree.
/// Source: Przyborowski and Wilenski 1940; mid-P, Lancaster 1961; dispersion, McCullagh and Nelder 1989.
/// </remarks>
public sealed record EarlyFailureContrast
{
    private EarlyFailureContrast(EarlyFailures first, EarlyFailures second, double confidence)
    {
        First = first;
        Second = second;
        var spread = Spread(first, second);
        var (x, y) = (first.Failures / spread, second.Failures / spread);
        var share = first.Exposure / (first.Exposure + second.Exposure);
        var above = Above(x, y, share);
        PValue = Math.Min(1, 2 * Math.Min(above, 1 - above));
        SmallestPValue = Math.Min(1, Math.Min(Math.Pow(share, x + y), Math.Pow(1 - share, x + y)));
        var perOdds = second.Exposure / first.Exposure;
        var tail = (1 - confidence) / 2;
        Ratio = new IntervalEstimate(
            first.Failures / second.Failures * perOdds,
            new Interval(x > 0 ? perOdds * Odds(x, y, tail) : 0, y > 0 ? perOdds * Odds(x, y, 1 - tail) : double.PositiveInfinity, confidence));
    }

    /// <summary>The first set.</summary>
    public EarlyFailures First { get; }

    /// <summary>The second set.</summary>
    public EarlyFailures Second { get; }

    /// <summary>Early hazard of the first over that of the second; infinite where the second had no early failure.</summary>
    public IntervalEstimate Ratio { get; }

    /// <summary>Two-sided mid-P chance of a ratio at least this far from 1, were both hazards equal.</summary>
    public double PValue { get; }

    /// <summary>The smallest p-value that this many failures could give: all of them in one set. Source: Tarone 1990.</summary>
    public double SmallestPValue { get; }

    /// <summary>Compares two sets; the reason where neither had an early failure.</summary>
    /// <param name="first">Estimate of the first set.</param>
    /// <param name="second">Estimate of the second set, to the same age by the same distribution.</param>
    /// <param name="confidence">Confidence of the interval, in (0, 1).</param>
    /// <exception cref="ArgumentException">The ages differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    public static Outcome<EarlyFailureContrast> Compare(EarlyFailures first, EarlyFailures second, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (first.Age != second.Age) throw new ArgumentException($"The ages differ: {first.Age} and {second.Age} h.", nameof(second));
        return first.Failures + second.Failures < 1e-6
            ? new NotEstimable(NotEstimableKind.NoEvents, 0, $"Nothing failed before {first.Age:0.#} h.")
            : new EarlyFailureContrast(first, second, confidence);
    }

    private static double Spread(EarlyFailures first, EarlyFailures second)
    {
        List<EarlyFailures> known = [.. new[] { first, second }.Where(s => s.Units > 1)];
        var failures = known.Sum(s => s.Failures);
        return failures > 0 ? Math.Max(1, known.Sum(s => s.Squares) / failures) : 1;
    }

    /// <summary>Chance of x or more of x + y, half of the chance of x itself left out, at a share of the first in each.</summary>
    private static double Above(double x, double y, double share)
    {
        var atLeast = x > 0 ? SpecialFunctions.BetaRegularized(x, y + 1, share) : 1;
        var more = y > 0 ? SpecialFunctions.BetaRegularized(x + 1, y, share) : 0;
        return (atLeast + more) / 2;
    }

    /// <summary>The odds of the share at which <see cref="Above"/> has a value; it rises with the share.</summary>
    private static double Odds(double x, double y, double chance)
    {
        double low = -60, high = 60; // ln odds
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (Above(x, y, 1 / (1 + Math.Exp(-middle))) < chance) low = middle;
            else high = middle;
        }

        return Math.Exp((low + high) / 2);
    }
}
