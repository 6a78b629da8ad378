using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Effects;

/// <summary>
/// What touched units would have had if they were like the others: the others' rate at each location before the action, and how all rates moved
/// together between then and after it. What changed for everybody is in the second and cancels.
/// </summary>
public sealed class EffectNorm
{
    // The common move beforehand: a coefficient of variation of 0.6 where others tell of it, of 0.3 where nobody is left who could.
    private const double MoveShape = 3;
    private const double MoveShapeAlone = 11;
    private const int Nodes = 9;
    private const double Half = 0.5;

    private readonly double[] rates;

    private EffectNorm(double[] rates, double[] moves, double foundAfter, double expectedAfter)
    {
        this.rates = rates;
        Moves = moves;
        Move = (MoveShape + foundAfter) / (MoveShape + expectedAfter);
        FoundAfter = (int)foundAfter;
        ExpectedAfter = expectedAfter;
    }

    /// <summary>Findings of the others after the action.</summary>
    public int FoundAfter { get; }

    /// <summary>Findings that their rates before it give for the same time.</summary>
    public double ExpectedAfter { get; }

    /// <summary>Posterior mean of how all rates moved: one where after is as before.</summary>
    public double Move { get; }

    /// <summary>Values of equal chance: middles of nine equal shares of the posterior of the common move.</summary>
    internal IReadOnlyList<double> Moves { get; }

    /// <summary>The norm of the others.</summary>
    /// <param name="others">What they had, by location.</param>
    /// <param name="dispersion">Variance over mean of the findings of a look.</param>
    /// <returns>The norm; null where the others were not looked at before the action.</returns>
    /// <remarks>
    /// Rates: posterior means under a gamma distribution of locations' rates. The common move: Gamma(3, 3) beforehand, updated by what the others
    /// had after the action; where nobody else was looked at it stays
    /// at Gamma(11, 11). Source: conjugacy of gamma and Poisson, Gelman et al.
    /// 2013, Bayesian Data Analysis, section 2.6; before and after beside a group not touched: Card and Krueger 1994, American Economic Review 84.
    /// </remarks>
    public static EffectNorm? Estimate(IReadOnlyList<OthersThere> others, double dispersion = 1)
    {
        var exposure = others.Sum(o => o.ExposureBefore);
        if (!(exposure > 0))
            return null;
        var found = Half + others.Sum(o => (double)o.FoundBefore);
        var shape = others.Count < 2 ? 1 : GammaPoissonFit
            .Fit([.. others.Where(o => o.ExposureBefore > 0).Select(o => new CountExposure(o.FoundBefore, o.ExposureBefore))])
            .Match(fit => Math.Clamp(fit.Shape, 0.3, 1000), _ => 1);
        double[] own = [.. others.Select(o => (shape + o.FoundBefore) / (shape * exposure / found + o.ExposureBefore))];
        var after = others.Sum(o => (double)o.FoundAfter);
        var expected = others.Zip(own, (o, rate) => o.ExposureAfter * rate).Sum();
        var prior = expected > 0 ? MoveShape : MoveShapeAlone;
        double[] moves = [.. Enumerable.Range(0, Nodes).Select(i =>
            Quantile.Gamma((i + 0.5) / Nodes, prior + after / dispersion) / (prior + expected / dispersion))];
        return new EffectNorm(own, moves, after, expected);
    }

    /// <summary>Looks with what was expected in place of exposure, the common move not in it.</summary>
    public IReadOnlyList<EffectLook> Expect(IEnumerable<EffectLook> looks) =>
        [.. looks.Select(l => l with { Before = l.Before * rates[l.Location], After = l.After * rates[l.Location] })];
}
