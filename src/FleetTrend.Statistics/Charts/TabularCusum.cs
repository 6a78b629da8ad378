namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Two one-sided cumulative sums on measured values: above the target by more than an allowance, and below it. It signals
/// when either exceeds the limit. For counts of events use the sums in Monitoring.
/// </summary>
public sealed record TabularCusum
{
    /// <summary>Makes a chart.</summary>
    /// <param name="target">The value that is aimed at, in the values' unit.</param>
    /// <param name="allowance">Half the shift that is to be found, zero or more, in the same unit.</param>
    /// <param name="limit">The limit, above zero, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 6.3.2.3.</remarks>
    public TabularCusum(double target, double allowance, double limit)
    {
        if (!double.IsFinite(target))
            throw new ArgumentOutOfRangeException(nameof(target), target, "The target is finite.");
        if (!double.IsFinite(allowance) || allowance < 0)
            throw new ArgumentOutOfRangeException(nameof(allowance), allowance, "The allowance is finite, zero or more.");
        if (!(limit > 0) || double.IsInfinity(limit))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "The limit is finite and above zero.");
        Target = target;
        Allowance = allowance;
        Limit = limit;
    }

    /// <summary>The value that is aimed at.</summary>
    public double Target { get; }

    /// <summary>What a value may lie off without adding to a sum.</summary>
    public double Allowance { get; }

    /// <summary>The sum above which it signals.</summary>
    public double Limit { get; }

    /// <summary>Runs both sums over values.</summary>
    /// <param name="values">Values in order of time, each finite.</param>
    /// <param name="headStart">Start of both sums, zero or more; half the limit is usual after an action.</param>
    /// <returns>One step per value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite, or the head start is negative.</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 6.3.2.3; head start, Lucas and Crosier 1982, Technometrics 24.</remarks>
    public IReadOnlyList<TabularCusumStep> Run(IReadOnlyList<double> values, double headStart = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(headStart);
        var steps = new TabularCusumStep[values.Count];
        var (upper, lower) = (headStart, headStart);
        for (var i = 0; i < steps.Length; i++)
        {
            var value = values[i];
            if (!double.IsFinite(value))
                throw new ArgumentOutOfRangeException(nameof(values), value, "A value is finite.");
            upper = Math.Max(0, upper + value - Target - Allowance);
            lower = Math.Max(0, lower + Target - Allowance - value);
            steps[i] = new TabularCusumStep(value, upper, lower, upper > Limit || lower > Limit);
        }
        return steps;
    }
}
