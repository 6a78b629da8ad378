using MathNet.Numerics;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Whether units could all have one rate: counts against what the pooled rate gives each unit's exposure. For equal
/// exposures it is the index of dispersion of the counts.
/// </summary>
public sealed record EqualRatesTest
{
    private EqualRatesTest(long events, double pooledRate, double chiSquare, double deviance, int degreesOfFreedom)
    {
        Events = events;
        PooledRate = pooledRate;
        ChiSquare = chiSquare;
        Deviance = deviance;
        DegreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>Events of all units.</summary>
    public long Events { get; }

    /// <summary>Events over exposure of all units.</summary>
    public double PooledRate { get; }

    /// <summary>Sum of (observed - expected)² / expected.</summary>
    public double ChiSquare { get; }

    /// <summary>Twice the log-likelihood of a rate for each unit over that of one rate.</summary>
    public double Deviance { get; }

    /// <summary>Units with exposure, less one.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>
    /// Chance of such a chi-square were all rates equal; near the truth where most units expect five events or more, from
    /// the chi-square distribution.
    /// </summary>
    public double PValue => SpecialFunctions.GammaUpperRegularized(DegreesOfFreedom / 2.0, ChiSquare / 2);

    /// <summary>The same from the deviance.</summary>
    public double DeviancePValue => SpecialFunctions.GammaUpperRegularized(DegreesOfFreedom / 2.0, Deviance / 2);

    /// <summary>Tests that all units have one rate.</summary>
    /// <param name="units">Units; those without exposure do not enter.</param>
    /// <returns>
    /// The test; <see cref="NotEstimableKind.NothingObserved"/> without exposure, <see cref="NotEstimableKind.NoEvents"/>
    /// without events, <see cref="NotEstimableKind.NoInformation"/> for a single unit.
    /// </returns>
    /// <remarks>Source: Pearson's chi-square and the likelihood-ratio (G) statistic; Fisher 1925 for the index of dispersion (textbook).</remarks>
    public static Outcome<EqualRatesTest> Test(IReadOnlyList<CountExposure> units)
    {
        var observed = units.Where(u => u.Exposure > 0).ToList();
        var events = observed.Sum(u => (long)u.Events);
        if (observed.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit had exposure.");
        if (events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No unit had an event: their rates cannot be told apart.");
        if (observed.Count == 1)
            return new NotEstimable(NotEstimableKind.NoInformation, events, "One unit has no others to differ from.");

        var pooled = events / observed.Sum(u => u.Exposure);
        var (chiSquare, deviance) = (0.0, 0.0);
        foreach (var unit in observed)
        {
            var expected = pooled * unit.Exposure;
            chiSquare += (unit.Events - expected) * (unit.Events - expected) / expected;
            deviance += 2 * ((unit.Events > 0 ? unit.Events * Math.Log(unit.Events / expected) : 0) - (unit.Events - expected));
        }
        return new EqualRatesTest(events, pooled, chiSquare, Math.Max(0, deviance), observed.Count - 1);
    }
}
