namespace FleetTrend.Statistics.Norms;

/// <summary>
/// How many of many calls are by chance: p-values turned into q-values. Calling everything with q at most 0.05 keeps the
/// expected share of false calls among the calls at or below 0.05.
/// </summary>
public static class FalseDiscovery
{
    /// <summary>Step-up q-values, for p-values that are independent or positively dependent.</summary>
    /// <param name="pValues">p-values in any order, each in [0, 1].</param>
    /// <returns>q-values in the same order, each in [0, 1] and not below its p-value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value is outside [0, 1].</exception>
    /// <remarks>Source: Benjamini and Hochberg 1995, J. R. Stat. Soc. B 57.</remarks>
    public static IReadOnlyList<double> QValues(IReadOnlyList<double> pValues) => StepUp(pValues, pValues.Count);

    /// <summary>
    /// The p-value up to which everything is called at a level: level times rank over number of tests, at the largest rank
    /// whose p-value lies at or below it.
    /// </summary>
    /// <param name="pValues">p-values in any order, each in [0, 1].</param>
    /// <param name="level">Share of false calls among calls that is accepted, in (0, 1).</param>
    /// <returns>The threshold; zero where nothing is called.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value is outside [0, 1], or the level outside (0, 1).</exception>
    /// <remarks>Source: Benjamini and Hochberg 1995, J. R. Stat. Soc. B 57.</remarks>
    public static double Threshold(IReadOnlyList<double> pValues, double level)
    {
        Confidences.Check(level);
        return level * QValues(pValues).Count(q => q <= level) / Math.Max(1, pValues.Count);
    }

    private static double[] StepUp(IReadOnlyList<double> pValues, double factor)
    {
        var p = Multiplicity.Checked(pValues);
        var order = Multiplicity.Ascending(p);
        var q = new double[p.Length];
        var smallest = 1.0;
        for (var rank = p.Length; rank >= 1; rank--)
        {
            smallest = Math.Min(smallest, p[order[rank - 1]] * (factor / rank));
            q[order[rank - 1]] = smallest;
        }
        return q;
    }
}
