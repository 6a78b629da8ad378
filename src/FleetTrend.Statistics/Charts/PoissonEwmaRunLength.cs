using FleetTrend.Statistics.Monitoring;
using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Average number of counts until an exponentially weighted moving average of Poisson counts leaves its long-run limits,
/// by a Markov chain on cells between the limits. The average takes countably many values, so that more cells change the
/// answer little by little: from a hundred cells to four hundred by up to half a percent in the published setting.
/// </summary>
public static class PoissonEwmaRunLength
{
    /// <summary>The average run from the expected mean, the signalling count included.</summary>
    /// <param name="mean">True mean count, above zero.</param>
    /// <param name="expected">Mean count as expected, above zero; the average starts there.</param>
    /// <param name="weight">Weight of a new count, above zero and at most one.</param>
    /// <param name="width">Width of the limits in standard deviations of the average, above zero.</param>
    /// <param name="cells">Cells between the limits, 3 to 1000.</param>
    /// <param name="move">How a cell stands for the average.</param>
    /// <returns>The average; <see cref="NotEstimableKind.DidNotConverge"/> where it is beyond 10^12 counts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Source: Borror, Champ and Rigdon 1998, Journal of Quality Technology 30; cells as in Brook and Evans 1972, Biometrika 59.</remarks>
    public static Outcome<double> Mean(
        double mean, double expected, double weight, double width, int cells = 101, CellMove move = CellMove.Spread)
    {
        ExponentialCusum.CheckPositive(mean, nameof(mean));
        ExponentialCusum.CheckPositive(expected, nameof(expected));
        ExponentialCusum.CheckPositive(width, nameof(width));
        if (!(weight is > 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight lies above zero and is at most one.");
        ArgumentOutOfRangeException.ThrowIfLessThan(cells, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cells, 1000);

        var half = width * Math.Sqrt(weight * expected / (2 - weight));
        var (low, size) = (expected - half, 2 * half / cells);
        var distribution = CusumRunLength.CountChances(mean);
        var moves = Matrix<double>.Build.Dense(cells, cells);
        for (var cell = 0; cell < cells; cell++)
        {
            // Where the average moves to, in cells above the lower limit.
            var (from, to) = (Position(cell), Position(cell + 1));
            for (var count = 0; count < distribution.Length; count++)
            {
                var step = weight * count / size;
                if (move == CellMove.Midpoint)
                    Add(moves, cell, (from + to) / 2 + step, distribution[count]);
                else
                    Share(moves, cell, from + step, to + step, distribution[count]);
            }
        }
        return RunLengthEquation.Solve(moves).Then<double>(lengths => lengths[cells / 2]);

        double Position(double edge) => ((1 - weight) * (low + edge * size) - low) / size;
    }

    private static void Add(Matrix<double> moves, int cell, double position, double chance)
    {
        var target = Math.Ceiling(position) - 1;
        if (target >= 0 && target < moves.ColumnCount)
            moves[cell, (int)target] += chance;
    }

    private static void Share(Matrix<double> moves, int cell, double from, double to, double chance)
    {
        if (to <= from)
        {
            Add(moves, cell, from, chance);
            return;
        }
        var first = (int)Math.Clamp(Math.Floor(from), 0, moves.ColumnCount);
        for (var target = first; target < moves.ColumnCount && target < to; target++)
        {
            var overlap = Math.Min(to, target + 1) - Math.Max(from, target);
            if (overlap > 0)
                moves[cell, target] += chance * overlap / (to - from);
        }
    }
}
