namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Exponentially weighted moving average of measured values with control limits: each value moves the average by a share of
/// its distance to it.
/// </summary>
public sealed record EwmaChart
{
    /// <summary>Makes a chart.</summary>
    /// <param name="target">The value that is aimed at, and where the average starts.</param>
    /// <param name="deviation">Standard deviation of single values, above zero.</param>
    /// <param name="weight">Share of the distance by which a value moves the average, above zero and at most one.</param>
    /// <param name="width">Width of the limits in standard deviations of the average, above zero; usually three.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    /// <remarks>Source: Roberts 1959, Technometrics 1; NIST/SEMATECH e-Handbook 6.3.2.4.</remarks>
    public EwmaChart(double target, double deviation, double weight, double width = 3)
    {
        if (!double.IsFinite(target))
            throw new ArgumentOutOfRangeException(nameof(target), target, "The target is finite.");
        if (!(deviation > 0) || double.IsInfinity(deviation))
            throw new ArgumentOutOfRangeException(nameof(deviation), deviation, "The deviation is finite and above zero.");
        if (!(weight is > 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight lies above zero and is at most one.");
        if (!(width > 0) || double.IsInfinity(width))
            throw new ArgumentOutOfRangeException(nameof(width), width, "The width is finite and above zero.");
        Target = target;
        Deviation = deviation;
        Weight = weight;
        Width = width;
    }

    /// <summary>The value that is aimed at.</summary>
    public double Target { get; }

    /// <summary>Standard deviation of single values.</summary>
    public double Deviation { get; }

    /// <summary>Share of the distance by which a value moves the average.</summary>
    public double Weight { get; }

    /// <summary>Width of the limits in standard deviations of the average.</summary>
    public double Width { get; }

    /// <summary>Upper limit once the chart has run for long.</summary>
    public double UpperLimit => Target + HalfWidth(1);

    /// <summary>Lower limit once the chart has run for long.</summary>
    public double LowerLimit => Target - HalfWidth(1);

    /// <summary>Runs the average over values.</summary>
    /// <param name="values">Values in order of time, each finite.</param>
    /// <returns>One step per value, with the exact limits of that step; they widen to the long-run limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite.</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 6.3.2.4; variance at step i, weight / (2 - weight) · (1 - (1 - weight)^2i) times that of a value.</remarks>
    public IReadOnlyList<EwmaStep> Run(IReadOnlyList<double> values)
    {
        var steps = new EwmaStep[values.Count];
        var average = Target;
        for (var i = 0; i < steps.Length; i++)
        {
            var value = values[i];
            if (!double.IsFinite(value))
                throw new ArgumentOutOfRangeException(nameof(values), value, "A value is finite.");
            average = Weight * value + (1 - Weight) * average;
            var half = HalfWidth(1 - Math.Pow(1 - Weight, 2 * (i + 1.0)));
            steps[i] = new EwmaStep(value, average, Target - half, Target + half);
        }
        return steps;
    }

    private double HalfWidth(double share) => Width * Deviation * Math.Sqrt(Weight / (2 - Weight) * share);
}
