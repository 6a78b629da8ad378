using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Whether two power-law units, or groups of units, have the same exponent: the ratio of their conditional exponents, exactly F.
/// </summary>
/// <param name="Ratio">Conditional exponent of the second over that of the first.</param>
/// <param name="NumeratorFreedom">Degrees of freedom of the numerator: twice the first's informative events.</param>
/// <param name="DenominatorFreedom">Degrees of freedom of the denominator: twice the second's.</param>
/// <param name="SecondHigherPValue">Chance of at least this ratio were the exponents equal.</param>
public sealed record ExponentRatioTest(double Ratio, long NumeratorFreedom, long DenominatorFreedom, double SecondHigherPValue)
{
    /// <summary>Twice the smaller of the two one-sided chances, at most one.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(SecondHigherPValue, 1 - SecondHigherPValue));

    /// <summary>The test.</summary>
    /// <param name="first">Units of the first group, watched from age zero without a gap.</param>
    /// <param name="second">Units of the second group, likewise.</param>
    /// <param name="truncation">With <see cref="Truncation.Event"/> each unit ends at its last event.</param>
    /// <returns>The test; <see cref="NotEstimableKind.TooFewEvents"/> where a group has no two informative events from age zero.</returns>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, section 3.5.</remarks>
    public static Outcome<ExponentRatioTest> Test(
        IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second, Truncation truncation = Truncation.Time)
    {
        if (ConditionalExponent.Build(first, truncation) is not { } one || ConditionalExponent.Build(second, truncation) is not { } two)
        {
            return new NotEstimable(
                NotEstimableKind.TooFewEvents, first.Concat(second).Sum(u => (long)u.EventTimes.Count),
                "A group has fewer than two events that can tell a power law, or was not watched from age zero.");
        }

        var ratio = two.Estimate / one.Estimate;
        double a = one.Informative, b = two.Informative;
        return new ExponentRatioTest(
            ratio, 2 * one.Informative, 2 * two.Informative, SpecialFunctions.BetaRegularized(b, a, b / (b + (a * ratio))));
    }
}
