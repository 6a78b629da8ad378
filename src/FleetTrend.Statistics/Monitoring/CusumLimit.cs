using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// The limit of a <see cref="PoissonCusum"/> for a stated number of false calls on a fleet's real pattern of looks and
/// hours, found by simulating the fleet without trouble.
/// </summary>
/// <param name="Limit">The limit.</param>
/// <param name="FalseCalls">Units expected to signal falsely over the whole pattern at this limit.</param>
/// <param name="FalseCallsError">Monte Carlo standard error of that number.</param>
/// <param name="Simulations">Simulated fleets.</param>
public sealed record CusumLimit(double Limit, double FalseCalls, double FalseCallsError, int Simulations)
{
    /// <summary>Chooses the smallest limit that keeps false calls at or below what is allowed.</summary>
    /// <param name="expectedByUnit">For each unit, the events expected at each of its looks, in order.</param>
    /// <param name="ratio">The rate ratio watched for, above zero and not one.</param>
    /// <param name="allowedFalseCalls">Units that may signal falsely, over the pattern's whole span; above zero.</param>
    /// <param name="simulations">Fleets to simulate, 100 or more.</param>
    /// <param name="seed">Seed: the same seed gives the same limit.</param>
    /// <returns>
    /// The limit; <see cref="NotEstimableKind.NothingObserved"/> where no look expects anything, and
    /// <see cref="NotEstimableKind.NoInformation"/> where so many false calls are allowed that any limit will do.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>
    /// Source: the limit as a quantile of the largest value that the sum reaches without trouble, by simulation as in
    /// Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1.
    /// </remarks>
    public static Outcome<CusumLimit> Choose(
        IReadOnlyList<IReadOnlyList<double>> expectedByUnit, double ratio, double allowedFalseCalls, int simulations = 2000,
        int seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(simulations, 100);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(allowedFalseCalls);
        var units = expectedByUnit.Where(e => e.Any(x => x > 0)).ToList();
        if (units.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No look expects any event.");
        if (allowedFalseCalls >= units.Count)
        {
            return new NotEstimable(
                NotEstimableKind.NoInformation, 0, $"{allowedFalseCalls} false calls among {units.Count} units need no limit.");
        }

        var cusum = new PoissonCusum(ratio, 1);
        var random = new MersenneTwister(seed, threadSafe: false);
        var peaks = new double[checked(simulations * units.Count)];
        for (var s = 0; s < simulations; s++)
        {
            for (var u = 0; u < units.Count; u++)
                peaks[s * units.Count + u] = Peak(cusum, units[u], random);
        }
        // Peaks of units are exchangeable here only in the sum: the number of false calls is the number of peaks at the limit or above.
        var sorted = (double[])peaks.Clone();
        Array.Sort(sorted);
        var allowed = (int)Math.Floor(allowedFalseCalls * simulations);
        var edge = sorted[^(allowed + 1)];
        var limit = Math.Max(double.BitIncrement(edge), 1e-12);
        var calls = Enumerable.Range(0, simulations)
            .Select(s => (double)Enumerable.Range(0, units.Count).Count(u => peaks[s * units.Count + u] >= limit)).ToArray();
        var mean = calls.Average();
        var variance = calls.Sum(c => (c - mean) * (c - mean)) / (simulations - 1);
        return new CusumLimit(limit, mean, Math.Sqrt(variance / simulations), simulations);
    }

    /// <summary>
    /// Looks until the first signal of one unit under a true rate ratio, by simulation over its own pattern.
    /// </summary>
    /// <param name="expected">Events expected at each look, in order.</param>
    /// <param name="cusum">The watch.</param>
    /// <param name="trueRatio">True rate over expected rate, above zero; one for a sound unit.</param>
    /// <param name="simulations">Runs to simulate, one or more.</param>
    /// <param name="seed">Seed: the same seed gives the same answer.</param>
    /// <returns>Share of runs that have signalled by each look.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Source: direct simulation of the definition (Page 1954) with counts that are Poisson given the expectation.</remarks>
    public static IReadOnlyList<double> SignalShares(
        IReadOnlyList<double> expected, PoissonCusum cusum, double trueRatio, int simulations = 2000, int seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(simulations, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(trueRatio);
        var random = new MersenneTwister(seed, threadSafe: false);
        var first = new int[expected.Count];
        for (var s = 0; s < simulations; s++)
        {
            var sum = 0.0;
            for (var i = 0; i < expected.Count; i++)
            {
                sum = Math.Max(0, sum + cusum.Weight(Draw(random, trueRatio * expected[i]), expected[i]));
                if (sum >= cusum.Limit)
                {
                    first[i]++;
                    break;
                }
            }
        }
        var shares = new double[expected.Count];
        var signalled = 0;
        for (var i = 0; i < shares.Length; i++)
        {
            signalled += first[i];
            shares[i] = (double)signalled / simulations;
        }
        return shares;
    }

    private static double Peak(PoissonCusum cusum, IReadOnlyList<double> expected, Random random)
    {
        var (sum, peak) = (0.0, 0.0);
        foreach (var e in expected)
        {
            sum = Math.Max(0, sum + cusum.Weight(Draw(random, e), e));
            peak = Math.Max(peak, sum);
        }
        return peak;
    }

    private static int Draw(Random random, double mean) => mean > 0 ? Poisson.Sample(random, mean) : 0;
}
