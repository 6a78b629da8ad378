using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// Looks until the signal of a Poisson cumulative sum with constant expectation, exactly: on a lattice of 1/unit the sum is
/// a Markov chain with finitely many states.
/// </summary>
public sealed class CusumRunLength
{
    private const double NegligibleChance = 1e-290;

    private readonly Matrix<double> transition;
    private readonly Vector<double> signals;
    private readonly int start;

    private CusumRunLength(Matrix<double> transition, Vector<double> signals, int start)
    {
        this.transition = transition;
        this.signals = signals;
        this.start = start;
        var aboveZero = transition.Clone();
        aboveZero.ClearColumn(0);
        var states = Enumerable.Range(0, signals.Count).Select(s => (double)s).ToArray();
        var run = new RestartedRun(states, from => aboveZero.Row((int)from), from => signals[(int)from]);
        Mean = run.From(start).Match(mean => mean, _ => double.PositiveInfinity);
    }

    /// <summary>
    /// Average number of looks until the signal, the signalling look included; positive infinity where it is longer than double
    /// precision can say.
    /// </summary>
    public double Mean { get; }

    /// <summary>Chance of a signal within so many looks.</summary>
    /// <param name="looks">Number of looks, zero or more.</param>
    public double SignalWithin(int looks)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(looks);
        var chance = Vector<double>.Build.Dense(signals.Count);
        for (var i = 0; i < looks; i++)
            chance = signals + transition * chance;
        return Math.Min(1, chance[start]);
    }

    /// <summary>Builds the chain.</summary>
    /// <param name="mean">True mean count per look, above zero.</param>
    /// <param name="reference">Reference value, in lattice steps (reference value times <paramref name="unit"/>), one or more.</param>
    /// <param name="limit">Limit, in lattice steps, one or more.</param>
    /// <param name="unit">Lattice steps per event, one or more.</param>
    /// <param name="headStart">Start of the sum, in lattice steps, zero or more and below the limit.</param>
    /// <param name="direction">What the sum watches for.</param>
    /// <param name="alarm">Whether the limit itself signals.</param>
    /// <returns>The run length's distribution.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Source: Brook and Evans 1972, Biometrika 59; Lucas 1985, Technometrics 27. Time grows as the cube of the limit.</remarks>
    public static CusumRunLength Compute(
        double mean, int reference, int limit, int unit = 1, int headStart = 0,
        CusumDirection direction = CusumDirection.Upper, CusumAlarm alarm = CusumAlarm.AtOrAbove)
    {
        if (!(mean > 0) || double.IsInfinity(mean))
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean count is finite and above zero.");
        ArgumentOutOfRangeException.ThrowIfLessThan(reference, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(unit, 1);
        var states = alarm == CusumAlarm.AtOrAbove ? limit : limit + 1;
        ArgumentOutOfRangeException.ThrowIfNegative(headStart);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(headStart, states);

        var distribution = CountChances(mean);
        var chain = Matrix<double>.Build.Dense(states, states);
        var atOnce = Vector<double>.Build.Dense(states);
        for (var from = 0; from < states; from++)
        {
            for (var count = 0; count < distribution.Length; count++)
            {
                var step = direction == CusumDirection.Upper ? unit * (long)count - reference : reference - unit * (long)count;
                var to = Math.Max(0, from + step);
                if (to < states)
                    chain[from, (int)to] += distribution[count];
                else
                    atOnce[from] += distribution[count];
            }
        }
        return new CusumRunLength(chain, atOnce, headStart);
    }

    /// <summary>Chances of the counts 0, 1, 2 and so on, as far as they matter.</summary>
    internal static double[] CountChances(double mean)
    {
        var poisson = new MathNet.Numerics.Distributions.Poisson(mean);
        var most = (int)Math.Ceiling(mean + 12 * Math.Sqrt(mean) + 30);
        var distribution = new List<double>();
        for (var k = 0; k <= most; k++)
        {
            var chance = poisson.Probability(k);
            if (k > mean && chance < NegligibleChance)
                break;
            distribution.Add(chance);
        }
        return [.. distribution];
    }
}
