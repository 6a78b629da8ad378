using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Changes;

/// <summary>
/// Limits of the score at stated rates of false calls, from simulating the units with nothing changing: their own looks, rates, spread and
/// bunches, the norm estimated anew each time. So looking again and again, at many units, classes and parts, is inside the rate.
/// </summary>
public sealed class CallLimits
{
    private readonly ScorePaths paths;

    private CallLimits(IReadOnlyList<CallTier> tiers, ScorePaths paths, int simulations)
    {
        Tiers = tiers;
        this.paths = paths;
        Simulations = simulations;
    }

    /// <summary>The tiers in the order asked for.</summary>
    public IReadOnlyList<CallTier> Tiers { get; }

    /// <summary>Times that the whole was simulated.</summary>
    public int Simulations { get; }

    /// <summary>Unit-years simulated.</summary>
    public double UnitYears => paths.Years;

    /// <summary>Finds the limits.</summary>
    /// <param name="panels">The panels of the units, one per class of condition; false calls of all are added up.</param>
    /// <param name="spreads">Spread of each panel.</param>
    /// <param name="prior">What changes are looked for.</param>
    /// <param name="allowedPerYear">New false calls per unit-year, one per tier.</param>
    /// <param name="unitYears">Unit-years to simulate at least.</param>
    /// <param name="seed">Seed: the same seed gives the same limits.</param>
    /// <remarks>Source: limits by simulation of the units in control, as in Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1.</remarks>
    public static CallLimits Simulate(
        IReadOnlyList<WatchedPanel> panels, IReadOnlyList<RateSpread> spreads, ChangePrior prior, IReadOnlyList<double> allowedPerYear,
        double unitYears = 10_000, int seed = 1)
    {
        var ordinaryPaths = new ScorePaths(Math.Log(prior.LowerLine));
        var yearsOfOne = panels.Count == 0 ? 0 : panels.Max(p => p.UnitYears);
        var simulations = yearsOfOne > 0 ? (int)Math.Ceiling(unitYears / yearsOfOne) : 0;
        for (var p = 0; p < panels.Count && simulations > 0; p++)
        {
            var ordinary = new OrdinaryUnits(panels[p], spreads[p]);
            var scorer = new ChangeScorer(panels[p], spreads[p], prior);
            var random = new MersenneTwister(unchecked(seed * 7919 + p), threadSafe: false);
            for (var s = 0; s < simulations; s++)
            {
                var findings = ordinary.Draw(random);
                var counts = new PanelCounts(panels[p], findings);
                for (var i = 0; i < findings.Count; i++)
                    ordinaryPaths.Add(scorer, panels[p].Units[i], findings[i], counts);
            }
        }

        ordinaryPaths.Years = simulations * yearsOfOne;
        var candidates = ordinaryPaths.Candidates();
        return new CallLimits([.. allowedPerYear.Select(allowed => Tier(ordinaryPaths, candidates, allowed))], ordinaryPaths, simulations);
    }

    /// <summary>
    /// How sure a call is: unit-years for one false call as strong as this. Beyond a third of the unit-years simulated nothing can be said, and
    /// that is the answer (three expected calls of which none came have chance 0.05: the rule of three).
    /// </summary>
    /// <param name="logScore">Logarithm of the score.</param>
    /// <returns>Unit-years, and whether it is the most that can be said.</returns>
    /// <remarks>Source: Hanley and Lippman-Hand 1983, Journal of the American Medical Association 249 (rule of three).</remarks>
    public (double UnitYears, bool IsCapped) YearsPerFalseCall(double logScore)
    {
        var most = UnitYears / 3;
        var calls = paths.Calls(logScore);
        return calls * most <= UnitYears ? (most, true) : (UnitYears / calls, false);
    }

    /// <summary>The lowest limit with at most the calls allowed.</summary>
    private static CallTier Tier(ScorePaths ordinaryPaths, double[] candidates, double allowed)
    {
        if (!(ordinaryPaths.Years > 0))
            return new CallTier(allowed, double.PositiveInfinity, 0, 0);
        var (low, high) = (0, candidates.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (ordinaryPaths.Calls(candidates[middle]) <= allowed * ordinaryPaths.Years)
                high = middle;
            else
                low = middle + 1;
        }

        // Above every score that was simulated the rate is not known; the step keeps the limit there a limit.
        var limit = low < candidates.Length ? candidates[low] : candidates.Length > 0 ? Math.BitIncrement(candidates[^1]) : 0;
        var calls = ordinaryPaths.Calls(limit);
        return new CallTier(allowed, limit, calls / ordinaryPaths.Years, Math.Sqrt(calls) / ordinaryPaths.Years);
    }
}
