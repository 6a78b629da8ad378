using FleetTrend.Statistics.Changes;

namespace FleetTrend.Statistics.Effects;

/// <summary>
/// After something was done about a unit that was called: how much better what came after fits "back at its own level" than "still raised".
/// </summary>
public sealed record ActionOdds
{
    private const int StepDays = 28;

    /// <summary>Natural logarithm of the odds.</summary>
    public required double Log { get; init; }

    /// <summary>The most probable part of the unit that was raised.</summary>
    public required ChangeScope Scope { get; init; }

    /// <summary>The day after which it was raised, the most probable one; the looks until then are its own level.</summary>
    public required int Since { get; init; }

    /// <summary>The odds.</summary>
    /// <param name="looks">Looks at the unit, expected in place of exposure, in any order.</param>
    /// <param name="norm">The norm.</param>
    /// <param name="actionDay">Day of the action.</param>
    /// <param name="scopes">Parts of the unit that may be raised.</param>
    /// <param name="spread">How ordinary units differ.</param>
    /// <param name="prior">Ratios and how long ago the raise may have begun.</param>
    /// <returns>The odds; null where no part that may be raised had a finding before the action.</returns>
    /// <remarks>
    /// A unit is acted on because its findings were many, so that "after" is not set against "before": that would call any return to
    /// the mean a success. "Still raised": since t the rate of part s has been r times the unit's own level z, and is. "Back": it was until
    /// the action, and is z again. Both are averaged over t, r, s (as <see cref="ChangeLikelihood"/> has them), z ~ Gamma(k, k) and the common move
    /// of the norm; a look that holds the action expects of each side its share. With c the factor of a look, its count is Poisson with mean z c, and
    /// the integral over z is the product of c^n times (k + sum of c)^-(k + N). The averages' ratio is a Bayes factor.
    /// Source: Kass and Raftery 1995, Journal of the American Statistical Association 90 (Bayes factors); the rest is derived here.
    /// </remarks>
    public static ActionOdds? Estimate(
        IReadOnlyList<EffectLook> looks, EffectNorm norm, int actionDay, IReadOnlyList<ChangeScope> scopes, RateSpread spread, ChangePrior prior)
    {
        var (back, still) = (new LogSum(), new LogSum());
        (double Log, ChangeScope? Scope, int Since) best = (double.NegativeInfinity, null, 0);
        var first = looks.Where(l => l.Before > 0).Select(l => l.Day).DefaultIfEmpty(actionDay).Min();
        var all = Sum(looks, _ => true, int.MinValue);
        foreach (var scope in scopes)
        {
            bool IsInside(EffectLook look) => scope.IsWhole || scope.Locations.Contains(look.Location);
            List<EffectLook> astride = [.. looks.Where(l => l is { Before: > 0, After: > 0 })];
            var inside = astride.Select(IsInside).ToList();
            for (var step = 1; step <= prior.WindowPeriods; step++)
            {
                var since = actionDay - step * StepDays;
                var raised = Sum(looks, IsInside, since);
                if (raised.FoundBefore + astride.Where(IsInside).Sum(l => l.Found) > 0)
                {
                    var (logBack, logStill) = Terms(all, raised, astride, inside, norm, spread, prior);
                    var weight = Math.Log(scope.Weight);
                    back.Add(weight + logBack);
                    still.Add(weight + logStill);
                    var here = weight + Math.Max(logBack, logStill);
                    if (here > best.Log)
                        best = (here, scope, since);
                }

                if (since < first)
                    break; // raised from its first look on
            }
        }

        return best.Scope is null ? null : new ActionOdds { Log = back.Value - still.Value, Scope = best.Scope, Since = best.Since };
    }

    private static Sums Sum(IReadOnlyList<EffectLook> looks, Func<EffectLook, bool> isInside, int since)
    {
        var sums = new Sums(0, 0, 0, 0);
        foreach (var look in looks)
        {
            if (!isInside(look))
                continue;
            if (look.After > 0 && look.Before == 0)
                sums = sums with { FoundAfter = sums.FoundAfter + look.Found, After = sums.After + look.After };
            else if (look.After == 0 && look.Day > since)
                sums = sums with { FoundBefore = sums.FoundBefore + look.Found, Before = sums.Before + look.Before };
        }

        return sums;
    }

    /// <summary>Both likelihoods of one beginning and one part, averaged over ratios and moves of the norm, as logarithms.</summary>
    private static (double Back, double Still) Terms(
        Sums all, Sums raised, List<EffectLook> astride, List<bool> inside, EffectNorm norm, RateSpread spread, ChangePrior prior)
    {
        var (back, still) = (new LogSum(), new LogSum());
        var found = all.FoundBefore + all.FoundAfter + astride.Sum(l => (double)l.Found);
        for (var r = 0; r < prior.Ratios.Count; r++)
        {
            var (ratio, logRatio) = (prior.Ratios[r], Math.Log(prior.Ratios[r]));
            foreach (var move in norm.Moves)
            {
                var common = raised.FoundBefore * logRatio + all.FoundAfter * Math.Log(move);
                var expected = all.Before + (ratio - 1) * raised.Before + move * all.After;
                var (logBack, logStill) = (common, common + raised.FoundAfter * logRatio);
                var (ofBack, ofStill) = (expected, expected + (ratio - 1) * move * raised.After);
                for (var a = 0; a < astride.Count; a++)
                {
                    var (before, after) = (astride[a].Before, move * astride[a].After);
                    var (ifBack, ifStill) = inside[a] ? (ratio * before + after, ratio * (before + after)) : (before + after, before + after);
                    logBack += astride[a].Found == 0 ? 0 : astride[a].Found * Math.Log(ifBack);
                    logStill += astride[a].Found == 0 ? 0 : astride[a].Found * Math.Log(ifStill);
                    ofBack += ifBack;
                    ofStill += ifStill;
                }

                var weight = Math.Log(prior.RatioWeights[r] / norm.Moves.Count);
                back.Add(weight + Integrated(logBack, ofBack));
                still.Add(weight + Integrated(logStill, ofStill));
            }
        }

        return (back.Value, still.Value);

        double Integrated(double log, double expected) =>
            log / spread.Dispersion - (spread.Shape + found / spread.Dispersion) * Math.Log(spread.Shape + expected / spread.Dispersion);
    }

    private sealed record Sums(double FoundBefore, double Before, double FoundAfter, double After);
}
