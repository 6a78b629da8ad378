using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Whether several units share one power-law exponent, each having a level of its own: a likelihood ratio with
/// Bartlett's factor, near chi-square.
/// </summary>
/// <param name="Statistic">The likelihood ratio over its factor.</param>
/// <param name="DegreesOfFreedom">Units that entered, less one.</param>
/// <param name="PValue">Chance of at least this statistic were the exponents equal.</param>
/// <param name="Exponents">Conditional exponent of each unit that entered, in the order given.</param>
public sealed record ExponentHomogeneityTest(
    double Statistic, int DegreesOfFreedom, double PValue, IReadOnlyList<double> Exponents)
{
    /// <summary>The test over units watched from age zero without a gap; units with fewer than two informative events do not enter.</summary>
    /// <param name="units">The units.</param>
    /// <param name="truncation">With <see cref="Truncation.Event"/> each unit ends at its last event.</param>
    /// <returns>The test; <see cref="NotEstimableKind.TooFewEvents"/> where fewer than two units can enter.</returns>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, section 3.5.</remarks>
    public static Outcome<ExponentHomogeneityTest> Test(
        IReadOnlyList<RecurrenceUnit> units, Truncation truncation = Truncation.Time)
    {
        var own = units.Select(u => ConditionalExponent.Build([u], truncation)).OfType<ConditionalExponent>().ToList();
        if (own.Count < 2)
        {
            return new NotEstimable(
                NotEstimableKind.TooFewEvents, units.Sum(u => (long)u.EventTimes.Count),
                "Fewer than two units from age zero with two events each.");
        }
        double total = own.Sum(o => o.Informative);
        var common = total / own.Sum(o => o.Informative / o.Estimate);
        var ratio = 2 * (own.Sum(o => o.Informative * Math.Log(o.Estimate)) - total * Math.Log(common));
        var factor = 1 + (own.Sum(o => 1.0 / o.Informative) - 1 / total) / (6.0 * (own.Count - 1));
        var statistic = Math.Max(0, ratio / factor);
        return new ExponentHomogeneityTest(
            statistic, own.Count - 1, SpecialFunctions.GammaUpperRegularized((own.Count - 1) / 2.0, statistic / 2),
            [.. own.Select(o => o.Estimate)]);
    }
}
