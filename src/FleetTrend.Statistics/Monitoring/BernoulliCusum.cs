namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// One-sided cumulative sum on yes-or-no outcomes whose chances differ: each adds the log-likelihood of "odds times
/// <see cref="OddsRatio"/>" over "odds as expected", and the sum never falls below zero. A ratio above one watches for
/// worsening, below one for improvement.
/// </summary>
public sealed record BernoulliCusum
{
    /// <summary>Makes a watch.</summary>
    /// <param name="oddsRatio">The odds ratio it is tuned to, finite, above zero and not one.</param>
    /// <param name="limit">The limit, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above zero or is one, or the limit is not above zero.</exception>
    public BernoulliCusum(double oddsRatio, double limit)
    {
        if (!(oddsRatio > 0) || oddsRatio == 1 || double.IsInfinity(oddsRatio))
            throw new ArgumentOutOfRangeException(nameof(oddsRatio), oddsRatio, "The odds ratio is finite, above zero, and not one.");
        if (!(limit > 0))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit is above zero.");
        OddsRatio = oddsRatio;
        Limit = limit;
    }

    /// <summary>The odds ratio it is tuned to.</summary>
    public double OddsRatio { get; }

    /// <summary>The sum at which it signals (at or above).</summary>
    public double Limit { get; }

    /// <summary>What one outcome adds.</summary>
    /// <param name="happened">Whether the event happened.</param>
    /// <param name="chance">Its chance as expected, in [0, 1).</param>
    /// <returns>log(ratio) if it happened, less log(1 - chance + ratio · chance).</returns>
    /// <remarks>Source: Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1.</remarks>
    public double Weight(bool happened, double chance) =>
        (happened ? Math.Log(OddsRatio) : 0) - Math.Log(1 - chance + OddsRatio * chance);

    /// <summary>Runs the sum over outcomes.</summary>
    /// <param name="outcomes">Whether each happened and its chance as expected, in order of time.</param>
    /// <param name="start">Sum to start from, zero or more.</param>
    /// <returns>One step per outcome; its observed count is 0 or 1 and its expectation the chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A chance is outside [0, 1).</exception>
    /// <remarks>Source: Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1.</remarks>
    public IReadOnlyList<CusumStep> Run(IReadOnlyList<(bool Happened, double Chance)> outcomes, double start = 0)
    {
        var steps = new CusumStep[outcomes.Count];
        var (sum, excess) = (start, 0.0);
        for (var i = 0; i < steps.Length; i++)
        {
            var (happened, chance) = outcomes[i];
            if (!(chance is >= 0 and < 1))
                throw new ArgumentOutOfRangeException(nameof(outcomes), chance, "A chance is zero or more and below one.");
            var observed = happened ? 1 : 0;
            sum = Math.Max(0, sum + Weight(happened, chance));
            excess += observed - chance;
            steps[i] = new CusumStep(observed, chance, sum, sum >= Limit, excess);
        }
        return steps;
    }
}
