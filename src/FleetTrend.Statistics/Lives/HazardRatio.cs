using FleetTrend.Statistics.Rates;
using FleetTrend.Statistics.Recurrences;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// How many times likelier one group is to fail than another at every age, whatever the distribution of life: the proportional-hazards model for
/// two groups, for failure ages known exactly, right censoring and late entry.
/// </summary>
public sealed record HazardRatio
{
    /// <summary>Second group's hazard over the first's, with a normal interval on the logarithm.</summary>
    public required IntervalEstimate Ratio { get; init; }

    /// <summary>Logarithm of the ratio.</summary>
    public required double LogRatio { get; init; }

    /// <summary>Standard error of the logarithm, from the observed information.</summary>
    public required double StandardError { get; init; }

    /// <summary>Score test of equal hazards: chi-square with one degree of freedom; the log-rank test, but for its variance at ties.</summary>
    public required double ScoreChiSquare { get; init; }

    /// <summary>Chance of at least this score were the hazards equal.</summary>
    public double PValue => SpecialFunctions.GammaUpperRegularized(0.5, ScoreChiSquare / 2);

    /// <summary>Failures at ages at which both groups were under observation.</summary>
    public required long Failures { get; init; }

    /// <summary>Estimates the ratio.</summary>
    /// <param name="first">Lives of the first group.</param>
    /// <param name="second">Lives of the second group.</param>
    /// <param name="ties">How failures at one age enter.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>
    /// The estimate; <see cref="NotEstimableKind.NoEvents"/> without failures at ages at which both groups were under observation;
    /// <see cref="NotEstimableKind.NoFiniteMaximum"/> where only one group had some.
    /// </returns>
    /// <exception cref="ArgumentException">A life failed between two looks: use <see cref="CommonShapeFit"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: Cox 1972, J. R. Stat. Soc. B 34; ties Breslow 1974, Efron 1977.</remarks>
    public static Outcome<HazardRatio> Estimate(
        IReadOnlyList<Life> first, IReadOnlyList<Life> second, TieHandling ties = TieHandling.Efron, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (first.Concat(second).Any(l => l.Failed && !l.IsExact))
            throw new ArgumentException("A hazard ratio needs exact failure ages; some lives failed between two looks.", nameof(first));
        var (one, two) = (new AtRiskByAge(first), new AtRiskByAge(second));
        var ages = one.FailureAges.Union(two.FailureAges).Order()
            .Select(t => new PartialLikelihood.Age(t, one.AtRisk(t), two.AtRisk(t), one.FailuresAt(t), two.FailuresAt(t)));
        var likelihood = new PartialLikelihood(ages, ties);
        var failures = (long)(likelihood.FirstEvents + likelihood.SecondEvents);
        if (failures == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No failure at an age at which both groups were under observation.");
        if (likelihood.Maximise() is not { } b)
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum, failures, "Only one of the groups had a failure: the ratio has no finite estimate.");
        }

        var (score, information) = likelihood.At(0);
        var error = 1 / Math.Sqrt(likelihood.At(b).Information);
        var reach = Quantile.NormalTwoSided(confidence) * error;
        return new HazardRatio
        {
            Ratio = new IntervalEstimate(Math.Exp(b), new Interval(Math.Exp(b - reach), Math.Exp(b + reach), confidence)),
            LogRatio = b,
            StandardError = error,
            ScoreChiSquare = score * score / information,
            Failures = failures,
        };
    }
}
