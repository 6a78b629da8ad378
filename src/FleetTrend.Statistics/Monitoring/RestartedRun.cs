using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// The run of a sum that starts afresh each time it falls to zero, cut into stretches that end at zero or with the signal.
/// A stretch's mean length over its chance of a signal is the average run, with all digits even where signals are as rare as
/// 10^-200, where the direct equation for the average run would have lost them.
/// </summary>
internal sealed class RestartedRun
{
    private readonly Func<double, Vector<double>> moves;
    private readonly Func<double, double> signals;
    private readonly Vector<double> lengths;
    private readonly Vector<double> chances;

    /// <summary>Solves for stretches from each node.</summary>
    /// <param name="nodes">Values of the sum above zero that carry the solution.</param>
    /// <param name="moves">From a value, the weight of each node in the mean over where the sum goes next, zero and the signal apart.</param>
    /// <param name="signals">From a value, the chance of a signal at once.</param>
    public RestartedRun(IReadOnlyList<double> nodes, Func<double, Vector<double>> moves, Func<double, double> signals)
    {
        this.moves = moves;
        this.signals = signals;
        var solver = Matrix<double>.Build.DenseIdentity(nodes.Count) - Matrix<double>.Build.DenseOfRowVectors(nodes.Select(moves));
        var factored = solver.LU();
        lengths = factored.Solve(Vector<double>.Build.Dense(nodes.Count, 1));
        chances = factored.Solve(Vector<double>.Build.DenseOfEnumerable(nodes.Select(signals)));
        FromZero = Length(0) / Chance(0);
    }

    /// <summary>Average run from zero; infinite where a signal is rarer than double precision can say.</summary>
    public double FromZero { get; }

    /// <summary>Average run from a value over that from zero.</summary>
    public double ShareFrom(double start) => Length(start) / FromZero + (1 - Chance(start));

    /// <summary>Average run from a value, or the reason why there is none.</summary>
    public Outcome<double> From(double start)
    {
        var run = start == 0 ? FromZero : Length(start) + (1 - Chance(start)) * FromZero;
        return double.IsFinite(run)
            ? run
            : new NotEstimable(NotEstimableKind.DidNotConverge, 0, "The average run is longer than double precision can say.");
    }

    private double Length(double start) => 1 + moves(start) * lengths;

    private double Chance(double start) => signals(start) + moves(start) * chances;
}
