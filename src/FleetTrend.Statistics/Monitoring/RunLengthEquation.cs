using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// Average run lengths L as the solution of L = 1 + P L, where P moves a chart from one state to the next and drops what
/// signals.
/// </summary>
internal static class RunLengthEquation
{
    /// <summary>Beyond so many steps double precision leaves too few digits to call the answer a number.</summary>
    private const double Longest = 1e12;

    /// <summary>The average run from each state, or the reason why it is too long to be computed.</summary>
    public static Outcome<Vector<double>> Solve(Matrix<double> moves)
    {
        var ones = Vector<double>.Build.Dense(moves.RowCount, 1);
        var lengths = (Matrix<double>.Build.DenseIdentity(moves.RowCount) - moves).Solve(ones);
        return lengths.ForAll(l => l is > 0 and < Longest)
            ? lengths
            : new NotEstimable(NotEstimableKind.DidNotConverge, 0, "The average run is too long to be computed: beyond 10^12 steps.");
    }
}
