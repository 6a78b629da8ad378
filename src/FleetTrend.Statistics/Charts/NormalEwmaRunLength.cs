using FleetTrend.Statistics.Monitoring;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Average number of values until an <see cref="EwmaChart"/> with its long-run limits signals, on independent normal values
/// with the average starting on target.
/// </summary>
public static class NormalEwmaRunLength
{
    private const double SmallestWeight = 5e-3;

    /// <summary>The average run, the signalling value included.</summary>
    /// <param name="shift">True mean less target, in standard deviations of a value.</param>
    /// <param name="weight">Weight of a new value, 0.005 to 1.</param>
    /// <param name="width">Width of the limits in standard deviations of the average, above zero and at most 10.</param>
    /// <returns>The average; <see cref="NotEstimableKind.DidNotConverge"/> where it is beyond 10^12 values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    /// <remarks>Source: integral equation and quadrature of Crowder 1987, Technometrics 29; Lucas and Saccucci 1990, Technometrics 32.</remarks>
    public static Outcome<double> Mean(double shift, double weight, double width = 3)
    {
        if (!double.IsFinite(shift))
            throw new ArgumentOutOfRangeException(nameof(shift), shift, "The shift is finite.");
        if (!(weight is >= SmallestWeight and <= 1))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, $"A weight lies between {SmallestWeight} and one.");
        if (!(width is > 0 and <= 10))
            throw new ArgumentOutOfRangeException(nameof(width), width, "The width is above zero and at most ten.");

        var half = width * Math.Sqrt(weight / (2 - weight));
        // One value spreads the average by its weight: three nodes to that spread are enough: for a normal density the error falls like
        // exp(-2 (π / step)²).
        var rule = new GaussLegendreRule(-half, half, 24 + (int)(3 * 2 * half / weight));
        var moves = Matrix<double>.Build.Dense(rule.Order, rule.Order);
        for (var i = 0; i < rule.Order; i++)
            moves.SetRow(i, Moves(rule.GetAbscissa(i), shift, weight, rule));
        return RunLengthEquation.Solve(moves).Then<double>(lengths =>
            1 + Vector<double>.Build.Dense(Moves(0, shift, weight, rule)) * lengths);
    }

    private static double[] Moves(double start, double shift, double weight, GaussLegendreRule rule)
    {
        var row = new double[rule.Order];
        for (var i = 0; i < row.Length; i++)
        {
            var z = (rule.GetAbscissa(i) - (1 - weight) * start) / weight - shift;
            row[i] = rule.GetWeight(i) * Constants.InvSqrt2Pi / weight * Math.Exp(-z * z / 2);
        }
        return row;
    }
}
