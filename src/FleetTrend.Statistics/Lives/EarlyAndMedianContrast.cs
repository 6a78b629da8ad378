namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Two sets of units compared twice: does a part fail early more often, and does it last as long? A bad practice at fitting raises the
/// first and leaves the second alone.
/// </summary>
public sealed record EarlyAndMedianContrast
{
    private EarlyAndMedianContrast(Outcome<EarlyFailureContrast> early, Outcome<LifeContrast> median, double medianFrom)
    {
        Early = early;
        Median = median;
        MedianFrom = medianFrom;
    }

    /// <summary>Early failures, or why they are not compared.</summary>
    public Outcome<EarlyFailureContrast> Early { get; }

    /// <summary>Median lives, or why they are not compared.</summary>
    public Outcome<LifeContrast> Median { get; }

    /// <summary>
    /// Age from which lives count for the medians: 0; or the early age, where early failures differ and the medians differ no longer without
    /// them. A distribution fitted through an excess of early failures moves its median too.
    /// </summary>
    public double MedianFrom { get; }

    /// <summary>Compares two sets.</summary>
    /// <param name="distribution">Family of the medians' distributions, with two parameters.</param>
    /// <param name="course">Distribution of both sets together, whose course the early hours follow; see <see cref="Course"/>.</param>
    /// <param name="first">Units of the first set, each with its lives.</param>
    /// <param name="second">Units of the second set.</param>
    /// <param name="age">The early age, hours, above 0.</param>
    /// <param name="confidence">Confidence of the intervals, in (0, 1).</param>
    /// <exception cref="ArgumentException">The family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The age is not above 0 and finite, or the confidence not in (0, 1).</exception>
    /// <remarks>Source: <see cref="EarlyFailureContrast"/>, <see cref="LifeContrast"/>.</remarks>
    public static EarlyAndMedianContrast Estimate(
        LifeDistribution distribution,
        LifeModel course,
        IReadOnlyList<IReadOnlyList<Life>> first,
        IReadOnlyList<IReadOnlyList<Life>> second,
        double age,
        double confidence = 0.95)
    {
        var early = EarlyFailures.Estimate(course, first, age, confidence).Then(a =>
            EarlyFailures.Estimate(course, second, age, confidence).Then(b => EarlyFailureContrast.Compare(a, b, confidence)));
        var (median, from) = Decide(
            early,
            from => LifeContrast.Estimate(distribution, From(first, from), From(second, from), confidence),
            m => m.PValue,
            (m, p) => m with { PValue = p },
            age,
            confidence);
        return new EarlyAndMedianContrast(early, median, from);
    }

    /// <summary>
    /// The comparison of lives that stands beside one of early failures, and the age from which it counts them. Lives are called different only where
    /// both say so, with early failures and without; the limits shown are those of the one that decides.
    /// </summary>
    /// <param name="early">The comparison of early failures.</param>
    /// <param name="compare">Compares lives as seen from an age on; 0 for all of them.</param>
    /// <param name="pValue">Its p-value.</param>
    /// <param name="withPValue">The same with another p-value.</param>
    /// <param name="age">The early age.</param>
    /// <param name="confidence">Confidence.</param>
    internal static (Outcome<T> Lives, double From) Decide<T>(
        Outcome<EarlyFailureContrast> early, Func<double, Outcome<T>> compare, Func<T, double> pValue, Func<T, double, T> withPValue, double age,
        double confidence)
        where T : notnull
    {
        var all = compare(0);
        if (!all.IsEstimated || !early.TryGetValue(out var found) || found.PValue >= 1 - confidence) return (all, 0);
        var late = compare(age);
        if (!late.IsEstimated) return (late, age);
        var (p, later) = (pValue(all.Value), pValue(late.Value));
        return p < 1 - confidence && later >= 1 - confidence ? (late, age) : (withPValue(all.Value, Math.Max(p, later)), 0);
    }

    /// <summary>The distribution whose course the early hours follow: of the family, or of constant hazard where that has no fit.</summary>
    /// <param name="distribution">The family.</param>
    /// <param name="lives">The lives of all sets that are compared.</param>
    public static LifeModel Course(LifeDistribution distribution, IReadOnlyList<Life> lives) =>
        LifeFit.Fit(distribution, lives).Match(fit => fit.Model, _ => new LifeModel(LifeDistribution.Exponential, 1000));

    /// <summary>Lives as seen from an age on; 0 leaves them as they are.</summary>
    internal static IReadOnlyList<Life> From(IReadOnlyList<Life> lives, double age) =>
        age == 0 ? lives : [.. lives.Select(l => From(l, age)).OfType<Life>()];

    private static IReadOnlyList<IReadOnlyList<Life>> From(IReadOnlyList<IReadOnlyList<Life>> units, double age) => [.. units.Select(u => From(u, age))];

    /// <summary>A life as seen from an age on; null where it ended before, or more likely before than after.</summary>
    private static Life? From(Life life, double age)
    {
        if (life.Lower >= age) return new Life(life.Lower, life.Upper, Math.Max(life.Entry, Math.Min(age, life.Lower)), life.Count);
        return life.Failed && (life.Lower + life.Upper) / 2 > age ? new Life(age, life.Upper, age, life.Count) : null;
    }
}
