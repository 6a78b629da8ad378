using FleetTrend.Statistics.Changes;

namespace FleetTrend.Statistics.Effects;

/// <summary>After work was done in another way on some units: how much better what came after fits "fewer than before" than "as before".</summary>
public static class PracticeOdds
{
    // How all touched units ran together before, beside the norm.
    private static readonly double[] Before = [0.5, 1, 2, 4, 8];

    /// <summary>Natural logarithm of the odds.</summary>
    /// <param name="units">Looks at each touched unit, at the locations that were touched, expected in place of exposure.</param>
    /// <param name="norm">The norm of those not touched.</param>
    /// <param name="spread">How ordinary units differ.</param>
    /// <param name="prior">Ratios: "fewer" is one over each of them.</param>
    /// <remarks>
    /// Derived here. <see cref="ChangeLikelihood.LogRatio"/> with a ratio below one since the change, added over the units: each unit's own
    /// level is integrated out, so that units that had many by chance and have fewer again are no success. Averaged over the ratios, the common
    /// move of the norm, and how all touched units ran together before (a half to eight times the norm), over the same average with the ratio one.
    /// </remarks>
    public static double Log(IReadOnlyList<IReadOnlyList<EffectLook>> units, EffectNorm norm, RateSpread spread, ChangePrior prior)
    {
        var (fewer, same) = (new LogSum(), new LogSum());
        List<Sums> sums = [.. units.Select(Sums.Of)];
        foreach (var move in norm.Moves)
        {
            foreach (var before in Before)
            {
                same.Add(LogLikelihood(sums, before, move, spread));
                for (var r = 0; r < prior.Ratios.Count; r++)
                    fewer.Add(Math.Log(prior.RatioWeights[r]) + LogLikelihood(sums, before, move / prior.Ratios[r], spread));
            }
        }

        return fewer.Value - same.Value;
    }

    private static double LogLikelihood(List<Sums> units, double before, double after, RateSpread spread)
    {
        var (logBefore, logAfter) = (Math.Log(before), Math.Log(after));
        var sum = 0.0;
        foreach (var unit in units)
        {
            var log = unit.Found * logBefore + unit.FoundAfter * logAfter;
            foreach (var look in unit.Astride)
                log += look.Found * Math.Log((look.Before + after * look.After) / (look.Before + look.After));
            sum += log / spread.Dispersion
                - (spread.Shape + unit.Found / spread.Dispersion) * Math.Log(spread.Shape + before * (unit.Before + after * unit.After) / spread.Dispersion);
        }

        return sum;
    }

    private sealed record Sums(int Found, int FoundAfter, double Before, double After, IReadOnlyList<EffectLook> Astride)
    {
        public static Sums Of(IReadOnlyList<EffectLook> looks) => new(
            looks.Sum(l => l.Found), looks.Where(l => l is { Before: 0, After: > 0 }).Sum(l => l.Found), looks.Sum(l => l.Before), looks.Sum(l => l.After),
            [.. looks.Where(l => l is { Found: > 0, Before: > 0, After: > 0 })]);
    }
}
