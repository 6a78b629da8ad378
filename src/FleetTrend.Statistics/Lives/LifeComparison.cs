using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Whether two or more groups of lives have one life distribution: observed against expected failures per group, and a test of their
/// difference.
/// </summary>
/// <remarks>
/// The pooled non-parametric estimate gives, for each life found failed between two looks, the chance of each age; failures and lives at
/// risk are then expected counts, and the statistic is that of the log-rank family. Its variance is the usual one of the counts less the
/// part that not knowing the ages takes away. On exact and right-censored lives it is the usual test to the digit.
/// Source: Mantel 1966; Peto and Peto 1972; Sun 1996 (interval-censored); missing information, Louis 1982.
/// </remarks>
public sealed record LifeComparison
{
    /// <summary>Failures per group.</summary>
    public required IReadOnlyList<double> Observed { get; init; }

    /// <summary>Failures expected per group if all shared one distribution.</summary>
    public required IReadOnlyList<double> Expected { get; init; }

    /// <summary>Weighted difference, observed less expected, per group.</summary>
    public required IReadOnlyList<double> Difference { get; init; }

    /// <summary>Variance of the first group's difference.</summary>
    public required double FirstVariance { get; init; }

    /// <summary>Chi-square statistic.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Groups less one.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Probability of a statistic as large or larger if all shared one distribution.</summary>
    public required double PValue { get; init; }

    /// <summary>Tests groups against one another without assuming a family. Source: see the type's remarks.</summary>
    /// <param name="groups">Two groups or more.</param>
    /// <param name="weight">Weight of a difference at an age.</param>
    /// <exception cref="ArgumentException">There are fewer than two groups.</exception>
    public static Outcome<LifeComparison> Compare(
        IReadOnlyList<IReadOnlyList<Life>> groups, ComparisonWeight weight = ComparisonWeight.LogRank)
    {
        RequireGroups(groups);
        if (groups.Any(g => g.Count == 0))
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "A group has no lives.");
        return TurnbullEstimate.Estimate([.. groups.SelectMany(g => g)]).Then<LifeComparison>(
            pooled => Test(new ComparisonCounts(pooled, groups, weight), groups.Count, pooled.Failures));
    }

    /// <summary>
    /// Likelihood-ratio test of one distribution for all groups against a distribution of its own, of the same family, for each.
    /// Source: Wilks 1938; Meeker and Escobar 1998, section 8.6.
    /// </summary>
    /// <exception cref="ArgumentException">There are fewer than two groups.</exception>
    public static Outcome<LikelihoodRatio> CompareFits(LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> groups)
    {
        RequireGroups(groups);
        var pooled = LifeFit.Fit(distribution, [.. groups.SelectMany(g => g)]);
        if (!pooled.IsEstimated) return pooled.Reason;
        double apart = 0;
        foreach (var group in groups)
        {
            var own = LifeFit.Fit(distribution, group);
            if (!own.IsEstimated) return own.Reason;
            apart += own.Value.LogLikelihood;
        }

        var freedom = (groups.Count - 1) * pooled.Value.FittedParameters;
        return LikelihoodRatio.Test(apart - pooled.Value.LogLikelihood, freedom);
    }

    private static void RequireGroups(IReadOnlyList<IReadOnlyList<Life>> groups)
    {
        if (groups.Count < 2) throw new ArgumentException("A comparison needs two groups or more.", nameof(groups));
    }

    private static Outcome<LifeComparison> Test(ComparisonCounts counts, int groups, long failures)
    {
        var free = groups - 1; // the differences sum to zero
        var variance = Matrix<double>.Build.Dense(free, free, (r, c) => counts.Covariance[r, c]);
        var difference = Vector<double>.Build.Dense(free, g => counts.Difference[g]);
        var scale = Enumerable.Range(0, free).Select(g => counts.Covariance[g, g]).DefaultIfEmpty(0).Min();
        if (!(scale > 0) || !(variance.Determinant() > 1e-12 * Math.Pow(scale, free)))
        {
            return new NotEstimable(
                NotEstimableKind.NoInformation, failures, "The groups do not overlap in age enough for a test of their difference.");
        }

        var chiSquare = difference * variance.Solve(difference);
        return new LifeComparison
        {
            Observed = counts.Observed,
            Expected = counts.Expected,
            Difference = counts.Difference,
            FirstVariance = counts.Covariance[0, 0],
            ChiSquare = chiSquare,
            DegreesOfFreedom = free,
            PValue = SpecialFunctions.GammaUpperRegularized(free / 2.0, chiSquare / 2),
        };
    }
}
