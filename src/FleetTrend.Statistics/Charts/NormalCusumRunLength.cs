using FleetTrend.Statistics.Monitoring;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Average number of values until a <see cref="TabularCusum"/> on independent normal values signals. All inputs are in
/// standard deviations of a value.
/// </summary>
public static class NormalCusumRunLength
{
    private const double LargestLimit = 100;

    /// <summary>The average run of the upper sum alone, the signalling value included.</summary>
    /// <param name="shift">True mean less target.</param>
    /// <param name="allowance">Allowance (reference value).</param>
    /// <param name="limit">Limit, above zero and at most 100.</param>
    /// <param name="headStart">Start of the sum, zero or more and below the limit.</param>
    /// <returns>The average; <see cref="NotEstimableKind.DidNotConverge"/> where it is longer than double precision can say.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    /// <remarks>
    /// Source: the integral equation of Page 1954, Biometrika 41, by Gauss-Legendre quadrature as in Vance 1986, Journal of
    /// Quality Technology 18.
    /// </remarks>
    public static Outcome<double> OneSided(double shift, double allowance, double limit, double headStart = 0) =>
        Run(shift, allowance, limit, headStart).From(headStart);

    /// <summary>The average run until either sum signals.</summary>
    /// <param name="shift">True mean less target.</param>
    /// <param name="allowance">Allowance (reference value), zero or more.</param>
    /// <param name="limit">Limit, above zero and at most 100.</param>
    /// <param name="headStart">Start of both sums, zero or more and below the limit.</param>
    /// <returns>The average; <see cref="NotEstimableKind.DidNotConverge"/> where it is longer than double precision can say.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    /// <remarks>Source: Kemp 1961, J. R. Stat. Soc. B 23; with head starts Lucas and Crosier 1982, Technometrics 24.</remarks>
    public static Outcome<double> TwoSided(double shift, double allowance, double limit, double headStart = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(allowance);
        var up = Run(shift, allowance, limit, headStart);
        var down = Run(-shift, allowance, limit, headStart);
        var run = (up.ShareFrom(headStart) + down.ShareFrom(headStart) - 1) / (1 / up.FromZero + 1 / down.FromZero);
        return double.IsFinite(run) ? run : up.From(headStart);
    }

    private static RestartedRun Run(double shift, double allowance, double limit, double headStart)
    {
        if (!double.IsFinite(shift - allowance))
            throw new ArgumentOutOfRangeException(nameof(shift), shift, "Shift and allowance are finite.");
        if (!(limit is > 0 and <= LargestLimit))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, $"The limit is above zero and at most {LargestLimit}.");
        ArgumentOutOfRangeException.ThrowIfNegative(headStart);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(headStart, limit);

        // Three nodes to a standard deviation are enough: for a normal density the error falls like exp(-2 (π / step)²).
        var rule = new GaussLegendreRule(0, limit, 24 + (int)(3 * limit));
        var drift = shift - allowance;
        return new RestartedRun(
            rule.Abscissas,
            start => Vector<double>.Build.Dense(rule.Order, i => rule.GetWeight(i) * Density(rule.GetAbscissa(i) - start - drift)),
            start => SpecialFunctions.Erfc((limit - start - drift) / Constants.Sqrt2) / 2);
    }

    private static double Density(double z) => Constants.InvSqrt2Pi * Math.Exp(-z * z / 2);
}
