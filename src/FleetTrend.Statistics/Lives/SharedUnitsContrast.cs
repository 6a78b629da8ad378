using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// How many times as long lives of one set last as those of another where units (aircraft), not lives, are independent, and a unit may have lives in
/// both sets: what they share then cancels.
/// </summary>
/// <remarks>
/// One shape and a scale each, so that the ratio holds at every share failed. The variance of its logarithm is that of the
/// jackknife over units, each leaving both sets at once, in one Newton step from the fit. Few units make it unsteady; therefore the statistic is held
/// against Student's t.
/// Source: accelerated life with a factor, Meeker and Escobar 1998, chapter 17; jackknife by clusters, Lipsitz, Dear and Zhao 1994; sandwich variance,
/// Liang and Zeger 1986. How often it is right: COVERAGE.md.
/// </remarks>
public sealed record SharedUnitsContrast
{
    private SharedUnitsContrast(CommonShapeSearch.Top fit, double jackknife, int units, double confidence)
    {
        Shape = Math.Exp(fit.Tau);
        DegreesOfFreedom = units - 2;
        LogStandardError = Math.Sqrt(jackknife);
        DesignEffect = jackknife / Math.Pow(fit.LogRatioStandardError(0, 1), 2);
        var log = fit.Mus[0] - fit.Mus[1];
        var reach = StudentT.InvCDF(0, 1, DegreesOfFreedom, (1 + confidence) / 2) * LogStandardError;
        Ratio = new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(log - reach), Math.Exp(log + reach), confidence));
        // Where every unit has the same lives in both sets, there is neither a difference nor an error to hold it against.
        PValue = LogStandardError == 0 && Math.Abs(log) < 1e-9 ? 1
            : Math.Min(1, 2 * StudentT.CDF(0, 1, DegreesOfFreedom, -Math.Abs(log) / LogStandardError));
    }

    /// <summary>Shape that both sets share.</summary>
    public double Shape { get; }

    /// <summary>Standard error of the logarithm of the ratio, from the jackknife over units.</summary>
    public double LogStandardError { get; }

    /// <summary>Lives of the first set over those of the second, at every share failed; its interval leaves out 1 exactly where the test calls.</summary>
    public IntervalEstimate Ratio { get; }

    /// <summary>Variance between units over the variance that independent lives would give.</summary>
    public double DesignEffect { get; }

    /// <summary>Units with lives, less two.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Two-sided chance of a ratio at least this far from 1, did both sets last alike.</summary>
    public double PValue { get; init; }

    /// <summary>Fits both sets and compares them.</summary>
    /// <param name="distribution">A family with two parameters.</param>
    /// <param name="units">The units; those without lives say nothing.</param>
    /// <param name="confidence">Confidence of the interval, in (0, 1).</param>
    /// <returns>The contrast; or the reason: no fit, or none without one of the units, or too few units.</returns>
    /// <exception cref="ArgumentException">The family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<SharedUnitsContrast> Estimate(LifeDistribution distribution, IReadOnlyList<UnitLives> units, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        List<UnitLives> watched = [.. units.Where(u => u.First.Count + u.Second.Count > 0)];
        Confidences.Check(confidence);
        if (distribution == LifeDistribution.Exponential)
            throw new ArgumentException("An exponential has no shape to share.", nameof(distribution));
        var family = StandardDistribution.Select(distribution);
        var search = new CommonShapeSearch(family, [[.. watched.SelectMany(u => u.First)], [.. watched.SelectMany(u => u.Second)]]);
        if (search.Refusal() is { } refusal) return refusal;
        return search.MaximiseFrom(0.5) is { } peak ? Compare(family, peak, watched, search.Failures, confidence)
            : LifeFitStart.NoFiniteMaximum(search.Failures);
    }

    private static Outcome<SharedUnitsContrast> Compare(
        StandardDistribution family, CommonShapeSearch.Top fit, List<UnitLives> units, long failures, double confidence)
    {
        if (units.Count < 3)
            return new NotEstimable(NotEstimableKind.NoInformation, failures, "Two units cannot tell unit from set.");
        if (IsCarriedByOne(units.Select(u => u.First)) || IsCarriedByOne(units.Select(u => u.Second)))
            return new NotEstimable(NotEstimableKind.TooFewEvents, failures, "All failures of a set are on one unit.");
        List<Slopes> slopes = [.. units.Select(u => new Slopes(At(u.First, 0), At(u.Second, 1)))];
        var all = slopes.Aggregate((a, b) => new Slopes(a.First + b.First, a.Second + b.Second));
        var without = new double[units.Count];
        for (var i = 0; i < without.Length; i++)
        {
            if (slopes[i].StepWithout(all) is not { } step)
                return new NotEstimable(NotEstimableKind.TooFewEvents, failures, "Without one of the units the sets cannot be compared.");
            without[i] = step;
        }

        var mean = without.Average();
        return new SharedUnitsContrast(fit, (units.Count - 1.0) / units.Count * without.Sum(x => (x - mean) * (x - mean)), units.Count, confidence);

        LikelihoodPoint At(IReadOnlyList<Life> lives, int set) =>
            lives.Count == 0 ? default : family.LogLikelihood(new LifeArrays(lives), fit.Mus[set], fit.Tau);
    }

    /// <summary>Whether one unit has all failures of a set: without it nothing is left to fit.</summary>
    internal static bool IsCarriedByOne(IEnumerable<IReadOnlyList<Life>> units) => units.Count(u => u.Any(l => l.Failed)) == 1;

    /// <summary>Slopes and curvatures of the likelihood of a unit's lives in both sets.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Slopes(LikelihoodPoint First, LikelihoodPoint Second)
    {
        /// <summary>How far one Newton step moves ln ratio when this unit is left out; null where the rest alone has no peak near.</summary>
        public double? StepWithout(Slopes all)
        {
            var (a, b) = (First.MuMu - all.First.MuMu, First.MuTau - all.First.MuTau);
            var (c, d) = (Second.MuMu - all.Second.MuMu, Second.MuTau - all.Second.MuTau);
            var e = First.TauTau + Second.TauTau - all.First.TauTau - all.Second.TauTau;
            if (!(a > -1e-6 * all.First.MuMu && c > -1e-6 * all.Second.MuMu)) return null;
            var curve = e - (b * b / a) - (d * d / c);
            if (!(curve > 1e-10 * e)) return null;
            var tau = (-First.Tau - Second.Tau + (b / a * First.Mu) + (d / c * Second.Mu)) / curve;
            return ((-First.Mu - (b * tau)) / a) - ((-Second.Mu - (d * tau)) / c);
        }
    }
}
