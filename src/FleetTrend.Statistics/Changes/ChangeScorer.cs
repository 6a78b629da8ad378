namespace FleetTrend.Statistics.Changes;

/// <summary>
/// Scores the units of a panel: the average, over when a change began, how strong it is and which part it takes, of the likelihood ratio
/// "changed" over "as ever". A unit that always ran high scores low: its level is integrated out.
/// </summary>
/// <remarks>
/// Source: <see cref="ChangeLikelihood.LogRatio"/> averaged over a prior, a Bayes factor (Kass and Raftery 1995, Journal of the American
/// Statistical Association 90). A part without a finding since a time adds nothing: no news is no change for the worse.
/// </remarks>
internal sealed class ChangeScorer
{
    private readonly WatchedPanel panel;
    private readonly RateSpread spread;
    private readonly ChangePrior prior;
    private readonly double levelShape;
    private readonly double[] logRatios;
    private readonly double[] logWeights;
    private readonly double[] excess;
    private readonly double[] scopeLogWeights;
    private readonly double[] rates;
    private readonly int[] found;
    private readonly int[] foundSince;
    private readonly double[] expectedSince;
    private readonly List<int>[] scopesOf;
    private readonly int[] scopeFound;
    private readonly double[] scopeExpected;
    private readonly List<int> active = [];
    private readonly int whole;

    public ChangeScorer(WatchedPanel panel, RateSpread spread, ChangePrior prior)
    {
        this.panel = panel;
        this.spread = spread;
        this.prior = prior;
        levelShape = Math.Min(spread.Shape, prior.LargestLevelShape);
        logRatios = [.. prior.Ratios.Select(r => Math.Log(r))];
        logWeights = [.. prior.RatioWeights.Select(w => Math.Log(w))];
        excess = [.. prior.Ratios.Select(r => r - 1)];
        scopeLogWeights = [.. panel.Scopes.Select(s => Math.Log(s.Weight) - Math.Log(prior.WindowPeriods))];
        rates = new double[panel.Locations];
        found = new int[panel.Locations];
        foundSince = new int[panel.Locations];
        expectedSince = new double[panel.Locations];
        scopesOf = [.. Enumerable.Range(0, panel.Locations)
            .Select(l => panel.Scopes.Index().Where(s => !s.Item.IsWhole && s.Item.Locations.Contains(l)).Select(s => s.Index).ToList())];
        scopeFound = new int[panel.Scopes.Count];
        scopeExpected = new double[panel.Scopes.Count];
        whole = panel.Scopes.Index().Where(s => s.Item.IsWhole).Select(s => s.Index).DefaultIfEmpty(-1).First();
    }

    /// <summary>Logarithm of the score at the end of a period; negative infinity where nothing can be said.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="findings">Its findings by period.</param>
    /// <param name="counts">Those of all units, itself among them.</param>
    /// <param name="period">The period.</param>
    /// <param name="terms">Takes every term; null where only the sum is asked for.</param>
    public double Log(WatchedUnit unit, IReadOnlyList<UnitFinding> findings, PanelCounts counts, int period, ChangeTerms? terms = null)
    {
        Array.Clear(found);
        var until = 0;
        for (; until < findings.Count && findings[until].Period <= period; until++)
            found[findings[until].Location]++;
        var own = unit.Until(period);
        if (until == 0 || period < unit.FirstPeriod || !counts.TryRates(period, own, found, rates))
            return double.NegativeInfinity;
        var expected = 0.0;
        for (var l = 0; l < rates.Length; l++)
            expected += rates[l] * own[l];
        Reset();
        return Sum(unit, findings, until, period, expected, terms);
    }

    /// <summary>Score with all that is known of the change; null where nothing can be said.</summary>
    public ChangeScore? Describe(WatchedUnit unit, PanelCounts counts, int period)
    {
        var terms = new ChangeTerms(panel.Scopes.Count, prior.Ratios.Count, prior.WindowPeriods);
        var log = Log(unit, unit.Findings, counts, period, terms);
        if (double.IsNegativeInfinity(log))
            return null;
        var best = terms.Summarise(log);
        var scope = panel.Scopes[best.Scope];
        bool IsInside(int location) => scope.IsWhole || scope.Locations.Contains(location);
        var now = unit.Until(period);
        var before = unit.Until(best.Since - 1);
        var (expectedBefore, expectedAll) = (0.0, 0.0);
        for (var l = 0; l < rates.Length; l++)
        {
            if (!IsInside(l))
                continue;
            expectedBefore += rates[l] * before[l];
            expectedAll += rates[l] * now[l];
        }

        var odds = Math.Exp(Math.Min(log, 700)) * prior.ChanceOfChange / (1 - prior.ChanceOfChange);
        return new ChangeScore
        {
            Log = log,
            Chance = odds / (1 + odds),
            Ratio = prior.Ratios[best.Ratio],
            RatioShare = best.RatioShare,
            Scope = scope,
            ScopeShare = best.ScopeShare,
            Since = best.Since,
            SinceEarliest = best.Earliest,
            SinceLatest = best.Latest,
            FoundBefore = unit.Findings.Count(f => f.Period < best.Since && IsInside(f.Location)),
            ExpectedBefore = expectedBefore,
            FoundSince = unit.Findings.Count(f => f.Period >= best.Since && f.Period <= period && IsInside(f.Location)),
            ExpectedSince = expectedAll - expectedBefore,
        };
    }

    /// <summary>Steps back from the period, one at a time, and adds up the terms of every beginning.</summary>
    private double Sum(WatchedUnit unit, IReadOnlyList<UnitFinding> findings, int until, int period, double expected, ChangeTerms? terms)
    {
        var total = new LogSum();
        var at = new LogSum();
        var now = unit.Until(period);
        var (count, exposed) = (levelShape + until / spread.Dispersion, levelShape + expected / spread.Dispersion);
        // A change from the first period on would be a level, and no change.
        var first = Math.Max(unit.FirstPeriod + 1, period - prior.WindowPeriods + 1);
        for (var since = period; since >= first; since--)
        {
            while (until > 0 && findings[until - 1].Period >= since)
                AddFinding(findings[--until].Location);
            if (terms is null && since < period && !unit.IsWatched(since))
            {
                // Nothing was looked at in this period: beginning in it and in the one after it are the same.
                total.Add(at.Value);
                continue;
            }

            var before = unit.Until(since - 1);
            var wholeExpected = 0.0;
            for (var l = 0; l < rates.Length; l++)
            {
                expectedSince[l] = rates[l] * (now[l] - before[l]);
                wholeExpected += expectedSince[l];
            }

            if (wholeExpected >= expected * (1 - 1e-9))
                break;
            at.Clear();
            foreach (var scope in active)
                AddTerms(scope, since, scope == whole ? wholeExpected : ExpectedIn(panel.Scopes[scope]), count, exposed, ref at, terms);
            total.Add(at.Value);
        }

        return total.Value;
    }

    /// <summary>Adds the terms of one part and one beginning: see <see cref="ChangeLikelihood.LogRatio"/>.</summary>
    /// <param name="scope">Index of the part.</param>
    /// <param name="since">The first period of the change.</param>
    /// <param name="expectedInScope">Findings expected in the part since.</param>
    /// <param name="count">Shape of the level and findings ever.</param>
    /// <param name="exposed">Shape of the level and findings expected ever.</param>
    /// <param name="sum">Takes the terms.</param>
    /// <param name="terms">Takes each of them; null where only the sum is asked for.</param>
    private void AddTerms(int scope, int since, double expectedInScope, double count, double exposed, ref LogSum sum, ChangeTerms? terms)
    {
        var (inScope, share) = (scopeFound[scope] / spread.Dispersion, expectedInScope / spread.Dispersion / exposed);
        for (var r = 0; r < logRatios.Length; r++)
        {
            var log = scopeLogWeights[scope] + logWeights[r] + inScope * logRatios[r] - count * Math.Log(1 + excess[r] * share);
            sum.Add(log);
            terms?.Add(scope, r, since, log);
        }
    }

    private double ExpectedIn(ChangeScope scope)
    {
        var sum = 0.0;
        foreach (var l in scope.Locations)
            sum += expectedSince[l];
        return sum;
    }

    private void AddFinding(int location)
    {
        foundSince[location]++;
        if (whole >= 0)
            Count(whole);
        foreach (var scope in scopesOf[location])
            Count(scope);
    }

    private void Count(int scope)
    {
        if (scopeFound[scope]++ == 0)
            active.Add(scope);
    }

    private void Reset()
    {
        Array.Clear(foundSince);
        Array.Clear(scopeFound);
        active.Clear();
    }
}
