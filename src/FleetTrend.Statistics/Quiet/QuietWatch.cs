using FleetTrend.Statistics.Changes;

namespace FleetTrend.Statistics.Quiet;

/// <summary>Looks for units of which few findings are written down: since the beginning, or since some time of the last three years.</summary>
/// <remarks>
/// Own level z ~ Gamma(k, k). For a share q written down since period t, N found and E expected in all, n and e since t, all divided by the dispersion:
/// q^n ((k + E) / (k + E - (1 - q) e))^(k + N). Half of the prior is on "from the beginning", half on the periods of the window; shares are equally
/// probable. What is expected since t moves with what the others had since t, so that what falls for everybody is no question about anybody.
/// Source: conjugacy of gamma and Poisson, Gelman et al. 2013, Bayesian Data Analysis, section 2.6; sum over the time of a change, Shiryaev 1963,
/// Theory of Probability and its Applications 8; others at the same time, Card and Krueger 1994, American Economic Review 84.
/// </remarks>
public sealed class QuietWatch
{
    /// <summary>Starts are looked for in so many periods; an earlier one counts as from the beginning.</summary>
    private const int WindowPeriods = 39;

    /// <summary>How much it takes to believe that everybody's findings moved: so many findings expected of the others.</summary>
    private const double MoveShape = 3;

    /// <summary>Shares of the findings that are written down, equally probable.</summary>
    private static readonly double[] Shares = [0.01, 0.1, 0.2, 1.0 / 3];

    private readonly WatchedPanel panel;
    private readonly RateSpread spread;
    private readonly double[] foundSince;
    private readonly double[] expectedSince;

    /// <summary>Makes it.</summary>
    /// <param name="panel">All classes together, as <see cref="CombinedPanel"/> makes it.</param>
    /// <param name="spread">How units differ and how findings come, all classes together.</param>
    public QuietWatch(WatchedPanel panel, RateSpread spread)
    {
        ArgumentNullException.ThrowIfNull(panel);
        (this.panel, this.spread) = (panel, spread);
        foundSince = new double[panel.Periods + 1];
        expectedSince = new double[panel.Periods + 1];
        foreach (var finding in panel.Units.SelectMany(u => u.Findings))
            foundSince[finding.Period]++;
        for (var p = panel.Periods - 1; p >= 0; p--)
        {
            foundSince[p] += foundSince[p + 1];
            expectedSince[p] = panel.Units.Sum(u => u.ExposureSince(p));
        }
    }

    /// <summary>Odds of a unit.</summary>
    /// <param name="unit">Index of the unit.</param>
    /// <returns>The odds; null where nothing is expected.</returns>
    public QuietOdds? At(int unit) => Estimate(panel.Units[unit], CountByPeriod(panel.Units[unit]));

    /// <summary>Whether a unit would be asked about, had nothing been found; where not, its looks are too few to say anything.</summary>
    /// <param name="unit">Index of the unit.</param>
    public bool CanBeAsked(int unit) =>
        Estimate(panel.Units[unit], new int[panel.Units[unit].LastPeriod - panel.Units[unit].FirstPeriod + 1]) is { IsAsked: true };

    /// <summary>Findings of a unit expected from the beginning of a period on, at the rates that the others have had since then.</summary>
    /// <param name="unit">Index of the unit.</param>
    /// <param name="since">The period.</param>
    public double ExpectedSince(int unit, int since) => ExpectedSince(panel.Units[unit], since);

    private double ExpectedSince(WatchedUnit unit, int since)
    {
        var own = unit.ExposureSince(since);
        var othersFound = foundSince[since] - unit.Findings.Count(f => f.Period >= since);
        // Over all the time the others have what they have: the unit itself is in the norm of each of them, and is taken out of it here.
        var othersFoundInAll = foundSince[0] - unit.Findings.Count;
        var othersExpectedInAll = expectedSince[0] - unit.ExposureSince(unit.FirstPeriod);
        var othersExpected = othersExpectedInAll > 0 ? Math.Max(0, expectedSince[since] - own) * othersFoundInAll / othersExpectedInAll : othersFound;
        return own * (MoveShape + othersFound) / (MoveShape + othersExpected);
    }

    private QuietOdds? Estimate(WatchedUnit unit, int[] found)
    {
        var (foundInAll, before) = (found.Sum(), unit.ExposureSince(unit.FirstPeriod));
        if (!(before > 0))
            return null;
        var (sum, top, foundHere) = (0.0, double.NegativeInfinity, 0);
        QuietOdds? best = null;
        for (var since = unit.LastPeriod; since >= unit.FirstPeriod; since--)
        {
            foundHere += found[since - unit.FirstPeriod];
            var isWhole = since == unit.FirstPeriod;
            if (!isWhole && unit.LastPeriod - since >= WindowPeriods)
                continue;
            var expected = ExpectedSince(unit, since);
            var inAll = before - unit.ExposureSince(since) + expected;
            var prior = (isWhole ? 0.5 : 0) + (unit.LastPeriod - since < WindowPeriods ? 0.5 / WindowPeriods : 0);
            var odds = prior * Ratio(foundInAll, inAll, foundHere, expected);
            sum += odds;
            if (odds <= top)
                continue;
            top = odds;
            best = new QuietOdds(0, since, foundHere, expected);
        }

        return best! with { Log = Math.Log(sum) };
    }

    private double Ratio(double foundInAll, double inAll, double found, double expected)
    {
        var (k, d) = (spread.Shape, spread.Dispersion);
        return Shares.Average(q => Math.Exp(
            found / d * Math.Log(q) + (k + foundInAll / d) * Math.Log((k + inAll / d) / (k + (inAll - (1 - q) * expected) / d))));
    }

    private static int[] CountByPeriod(WatchedUnit unit)
    {
        var counts = new int[unit.LastPeriod - unit.FirstPeriod + 1];
        foreach (var finding in unit.Findings)
            counts[finding.Period - unit.FirstPeriod]++;
        return counts;
    }
}
