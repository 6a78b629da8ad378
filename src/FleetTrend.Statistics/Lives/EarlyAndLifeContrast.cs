namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Two sets of lives compared twice, as by <see cref="EarlyAndMedianContrast"/>, where a unit (aircraft) may have lives in both sets.
/// </summary>
/// <remarks>
/// Lives by <see cref="SharedUnitsContrast"/>, where what a unit's lives share cancels. Early failures are compared as if the two sets were on different units:
/// where units differ and have parts of both, that calls less often than stated. How often it is right: COVERAGE.md.
/// </remarks>
public sealed record EarlyAndLifeContrast
{
    private EarlyAndLifeContrast(Outcome<EarlyFailureContrast> early, Outcome<SharedUnitsContrast> life, double lifeFrom)
    {
        Early = early;
        Life = life;
        LifeFrom = lifeFrom;
    }

    /// <summary>Early failures, or why they are not compared.</summary>
    public Outcome<EarlyFailureContrast> Early { get; }

    /// <summary>Lives, or why they are not compared.</summary>
    public Outcome<SharedUnitsContrast> Life { get; }

    /// <summary>Age from which lives count: 0; or the early age, where early failures differ and lives differ no longer without them.</summary>
    public double LifeFrom { get; }

    /// <summary>Compares two sets.</summary>
    /// <param name="distribution">Family of the lives, with two parameters.</param>
    /// <param name="course">Distribution of both sets together, whose course the early hours follow; see <see cref="EarlyAndMedianContrast.Course"/>.</param>
    /// <param name="units">The units with their lives in either set.</param>
    /// <param name="age">The early age, hours, above 0.</param>
    /// <param name="confidence">Confidence of the intervals, in (0, 1).</param>
    /// <exception cref="ArgumentException">The family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The age is not above 0 and finite, or the confidence not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static EarlyAndLifeContrast Estimate(
        LifeDistribution distribution, LifeModel course, IReadOnlyList<UnitLives> units, double age, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        var early = EarlyFailures.Estimate(course, [.. units.Select(u => u.First)], age, confidence).Then(a =>
            EarlyFailures.Estimate(course, [.. units.Select(u => u.Second)], age, confidence).Then(b => EarlyFailureContrast.Compare(a, b, confidence)));
        var (life, from) = EarlyAndMedianContrast.Decide(
            early,
            from => SharedUnitsContrast.Estimate(
                distribution,
                [.. units.Select(u => new UnitLives(EarlyAndMedianContrast.From(u.First, from), EarlyAndMedianContrast.From(u.Second, from)))],
                confidence),
            l => l.PValue,
            (l, p) => l with { PValue = p },
            age,
            confidence);
        return new EarlyAndLifeContrast(early, life, from);
    }
}
