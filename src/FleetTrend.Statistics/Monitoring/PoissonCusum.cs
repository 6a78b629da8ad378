namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// One-sided cumulative sum on counts with a different expectation at every look: at each look the log-likelihood of
/// "rate times <see cref="Ratio"/>" over "rate as expected" is added, and the sum never falls below zero. It signals when the
/// sum reaches <see cref="Limit"/>. A ratio above one watches for worsening, below one for improvement.
/// </summary>
public sealed record PoissonCusum
{
    /// <summary>Makes a watch.</summary>
    /// <param name="ratio">The rate ratio it is tuned to, above zero and not one.</param>
    /// <param name="limit">The limit, above zero; see <see cref="CusumLimit"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above zero or is one, or the limit is not above zero.</exception>
    public PoissonCusum(double ratio, double limit)
    {
        if (!(ratio > 0) || ratio == 1 || double.IsInfinity(ratio))
            throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "The ratio watched for is finite, above zero, and not one.");
        if (!(limit > 0))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit is above zero.");
        Ratio = ratio;
        Limit = limit;
    }

    /// <summary>The rate ratio it is tuned to.</summary>
    public double Ratio { get; }

    /// <summary>The sum at which it signals (at or above).</summary>
    public double Limit { get; }

    /// <summary>What one look adds.</summary>
    /// <param name="observed">Events found, zero or more.</param>
    /// <param name="expected">Events expected since the look before, zero or more.</param>
    /// <returns>observed · log(ratio) - (ratio - 1) · expected.</returns>
    /// <remarks>Source: Lucas 1985, Technometrics 27; varying expectation as in Rossi, Lampugnani and Marchi 1999, Statistics in Medicine 18.</remarks>
    public double Weight(int observed, double expected) => observed * Math.Log(Ratio) - (Ratio - 1) * expected;

    /// <summary>Runs the sum over looks.</summary>
    /// <param name="looks">Events found and expected at each look, in order of time.</param>
    /// <param name="start">Sum to start from, zero or more; half the limit is the usual head start after an action.</param>
    /// <param name="resetAfterSignal">Whether the sum starts again from zero after a signal, as the watch does after an action.</param>
    /// <returns>One step per look.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count or an expectation is negative or not finite.</exception>
    /// <remarks>Source: Page 1954, Biometrika 41; head start, Lucas and Crosier 1982, Technometrics 24.</remarks>
    public IReadOnlyList<CusumStep> Run(
        IReadOnlyList<(int Observed, double Expected)> looks, double start = 0, bool resetAfterSignal = false)
    {
        var steps = new CusumStep[looks.Count];
        var (sum, excess) = (start, 0.0);
        for (var i = 0; i < steps.Length; i++)
        {
            var (observed, expected) = looks[i];
            if (observed < 0 || !double.IsFinite(expected) || expected < 0)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(looks), (observed, expected), "Counts and expectations are finite, zero or more.");
            }
            sum = Math.Max(0, sum + Weight(observed, expected));
            excess += observed - expected;
            steps[i] = new CusumStep(observed, expected, sum, sum >= Limit, excess);
            if (resetAfterSignal && sum >= Limit)
                sum = 0;
        }
        return steps;
    }

    /// <summary>
    /// The count that the sum subtracts per expected event: (ratio - 1) / log(ratio). In units of counts the sum is the
    /// classical one with this reference value and the limit over log(ratio).
    /// </summary>
    /// <param name="ratio">The rate ratio watched for, above zero and not one.</param>
    /// <returns>Events per expected event, between one and the ratio.</returns>
    /// <remarks>Source: Lucas 1985, Technometrics 27.</remarks>
    public static double ReferenceValue(double ratio) => (ratio - 1) / Math.Log(ratio);
}
