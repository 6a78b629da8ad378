namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// One-sided cumulative sum on the hours between events, for events so rare that counts per look are mostly zero. It signals
/// when the sum reaches <see cref="Limit"/>; its average run length is <see cref="ExponentialCusumRunLength"/>.
/// </summary>
public sealed record ExponentialCusum
{
    /// <summary>Makes a watch.</summary>
    /// <param name="expectedGap">Mean hours between events as expected, above zero.</param>
    /// <param name="watchedGap">Mean hours between events that it is tuned to find, above zero and not the same.</param>
    /// <param name="limit">The limit, hours, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A mean or the limit is not finite and above zero, or both means are the same.</exception>
    /// <remarks>Source: the reference value that makes the sum a likelihood ratio; Lucas 1985, Technometrics 27.</remarks>
    public ExponentialCusum(double expectedGap, double watchedGap, double limit)
    {
        CheckPositive(expectedGap, nameof(expectedGap));
        CheckPositive(watchedGap, nameof(watchedGap));
        CheckPositive(limit, nameof(limit));
        if (expectedGap == watchedGap)
            throw new ArgumentOutOfRangeException(nameof(watchedGap), watchedGap, "The mean watched for differs from the one expected.");
        Reference = Math.Log(expectedGap / watchedGap) / (1 / watchedGap - 1 / expectedGap);
        Direction = watchedGap < expectedGap ? GapDirection.Shorter : GapDirection.Longer;
        Limit = limit;
    }

    /// <summary>The reference value, hours, between the two means.</summary>
    public double Reference { get; }

    /// <summary>What it watches for.</summary>
    public GapDirection Direction { get; }

    /// <summary>The sum at which it signals (at or above), hours.</summary>
    public double Limit { get; }

    /// <summary>Runs the sum over gaps.</summary>
    /// <param name="gaps">Hours between events, in order, each finite and zero or more.</param>
    /// <param name="start">Sum to start from, hours, zero or more.</param>
    /// <returns>One step per gap.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A gap is negative or not finite.</exception>
    /// <remarks>Source: Page 1954, Biometrika 41; Vardeman and Ray 1985, Technometrics 27.</remarks>
    public IReadOnlyList<GapStep> Run(IReadOnlyList<double> gaps, double start = 0)
    {
        var steps = new GapStep[gaps.Count];
        var sum = start;
        for (var i = 0; i < steps.Length; i++)
        {
            var gap = gaps[i];
            if (!double.IsFinite(gap) || gap < 0)
                throw new ArgumentOutOfRangeException(nameof(gaps), gap, "A gap is finite, zero or more.");
            sum = Math.Max(0, sum + (Direction == GapDirection.Shorter ? Reference - gap : gap - Reference));
            steps[i] = new GapStep(gap, sum, sum >= Limit);
        }
        return steps;
    }

    internal static void CheckPositive(double value, string name)
    {
        if (!(value > 0) || double.IsInfinity(value))
            throw new ArgumentOutOfRangeException(name, value, "The value is finite and above zero.");
    }
}
