using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Observed over expected for one unit against the others, with the exact interval of the one rate ratio that all its
/// strata share. It allows for the norm being an estimate too: few events of the others give a wide interval.
/// </summary>
public sealed record StandardisedRatio
{
    private StandardisedRatio(double ratio, Interval interval)
    {
        Ratio = ratio;
        Interval = interval;
    }

    /// <summary>Observed over expected; positive infinity where the others had no event in any of its strata.</summary>
    public double Ratio { get; }

    /// <summary>Exact interval of the ratio; the upper end is infinite where the others had no event.</summary>
    public Interval Interval { get; }

    /// <summary>
    /// Ratio and interval. Given each stratum's total, the unit's count is a sum of binomials with odds ratio times unit
    /// hours over other hours; each limit is the ratio at which the count seen, or a more extreme one, has the stated tail.
    /// </summary>
    /// <param name="standing">The unit's standing.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The ratio, or <see cref="NotEstimableKind.NoEvents"/> where neither the unit nor the others had an event.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: Breslow and Day 1987, Statistical Methods in Cancer Research II (conditional inference on a common rate
    /// ratio, from memory); with one stratum it is the interval of Clopper and Pearson 1934 on the odds scale.
    /// </remarks>
    public static Outcome<StandardisedRatio> Estimate(UnitStanding standing, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(standing);
        Confidences.Check(confidence);
        var strata = standing.Contributions.Where(c => c.Observed + c.OthersEvents > 0).ToList();
        if (strata.Count == 0)
        {
            return new NotEstimable(
                NotEstimableKind.NoEvents, 0, "Neither the unit nor the others had an event: their ratio may be anything.");
        }
        var observed = strata.Sum(s => (long)s.Observed);
        var others = strata.Sum(s => s.OthersEvents);
        var guess = Guess(strata, observed, others, confidence);
        var tail = (1 - confidence) / 2;
        var lower = observed == 0 ? 0 : Limit(strata, observed, guess.Lower, tail, isLower: true);
        var upper = others == 0 ? double.PositiveInfinity : Limit(strata, observed, guess.Upper, tail, isLower: false);
        return new StandardisedRatio(
            others == 0 ? double.PositiveInfinity : observed / strata.Sum(s => s.Expected), new Interval(lower, upper, confidence));
    }

    /// <summary>The limits with all strata pooled: exact where the unit's share of the hours is the same in each.</summary>
    private static Interval Guess(List<StratumContribution> strata, long observed, long others, double confidence)
    {
        var (own, other) = others > 0
            ? (strata.Sum(s => s.Expected), others)
            : (strata.Sum(s => s.ExposureHours), strata.Sum(s => s.OthersExposureHours));
        return RateRatio.Estimate(checked((int)observed), own, checked((int)others), other, confidence).Value.Interval;
    }

    private static double Limit(List<StratumContribution> strata, long observed, double ratio, double tail, bool isLower)
    {
        // The distribution is exact at any ratio; starting it near the answer keeps the tilt, and so what trimming left out, small.
        for (var round = 0; round < 20; round++)
        {
            var distribution = Distribution(strata, ratio);
            var tilt = isLower
                ? Root(x => distribution.AtLeast(observed, x) - tail)
                : Root(x => tail - distribution.AtMost(observed, x));
            ratio *= Math.Exp(tilt);
            if (Math.Abs(tilt) < 0.5)
                break;
        }
        return ratio;
    }

    private static CountDistribution Distribution(List<StratumContribution> strata, double ratio)
    {
        var distribution = CountDistribution.Zero;
        foreach (var s in strata)
        {
            var weighted = ratio * s.ExposureHours;
            distribution = distribution.Plus(CountDistribution.Binomial(s.Observed + s.OthersEvents, weighted / (weighted + s.OthersExposureHours)));
        }
        return distribution;
    }

    /// <summary>Root of an increasing function near zero: a bracket of at most two either way, then halving and secants.</summary>
    private static double Root(Func<double, double> gap)
    {
        var (low, high) = (-0.1, 0.1);
        while (gap(low) > 0 && low > -2)
            low = Math.Max(-2, low * 2);
        while (gap(high) < 0 && high < 2)
            high = Math.Min(2, high * 2);
        return MathNet.Numerics.RootFinding.Brent.TryFindRoot(gap, low, high, 1e-13, 200, out var root)
            ? root
            : gap(low) > 0 ? low : high;
    }
}
