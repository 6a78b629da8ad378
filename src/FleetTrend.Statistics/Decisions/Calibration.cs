namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// Whether chances come true: sorted by the chance and cut into groups of equal size, what was foreseen beside what was found. The limits are those of a
/// binomial count at the mean chance of the group, which is somewhat wider than the count of unequal chances.
/// </summary>
/// <remarks>Source: Hosmer and Lemeshow, Goodness of fit tests for the multiple logistic regression model, 1980 (groups by deciles of the chance).</remarks>
public static class Calibration
{
    /// <summary>The groups, the smallest chances first.</summary>
    /// <param name="outcomes">Chances with their outcomes, in any order.</param>
    /// <param name="groups">How many groups; fewer where there are fewer outcomes.</param>
    /// <param name="confidence">Share of groups inside their limits where every chance is true, at least.</param>
    /// <exception cref="ArgumentOutOfRangeException">A chance is outside [0, 1], there are no groups, or the confidence is not in (0, 1).</exception>
    public static IReadOnlyList<CalibrationBin> Compare(IEnumerable<ForeseenOutcome> outcomes, int groups = 10, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 1);
        ForeseenOutcome[] sorted = [.. outcomes.OrderBy(o => o.Chance).ThenBy(o => o.Happened)];
        if (Array.Exists(sorted, o => !(o.Chance is >= 0 and <= 1)))
            throw new ArgumentOutOfRangeException(nameof(outcomes), "A chance lies between 0 and 1.");
        groups = Math.Min(groups, sorted.Length);
        return [.. Enumerable.Range(0, groups).Select(i => Bin(sorted[Start(i)..Start(i + 1)], confidence))];

        int Start(int group) => (int)((long)group * sorted.Length / groups);
    }

    private static CalibrationBin Bin(ForeseenOutcome[] outcomes, double confidence)
    {
        var expected = outcomes.Sum(o => o.Chance);
        var (lower, upper) = CountDistribution.Binomial(outcomes.Length, expected / outcomes.Length).Limits(confidence);
        return new CalibrationBin(outcomes[0].Chance, outcomes[^1].Chance, outcomes.Length, expected, outcomes.Count(o => o.Happened), (int)lower, (int)upper);
    }
}
