using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// The mean time between events that a unit under a power law has reached at the end of its observation, in the modified
/// (bias-reduced) form of the handbook.
/// </summary>
/// <param name="Exponent">Modified exponent, (events - 1) over the sum of log(end / age).</param>
/// <param name="Lambda">Events over end to the power of the modified exponent.</param>
/// <param name="Hours">Reached mean time between events, hours.</param>
/// <param name="Interval">Its interval, hours.</param>
public sealed record ReachedMtbf(double Exponent, double Lambda, double Hours, Interval Interval)
{
    /// <summary>Slope of growth: by how much the logarithm of the mean time between events rises with the logarithm of age.</summary>
    public double GrowthSlope => 1 - Exponent;

    /// <summary>For one unit watched from age zero to a fixed end.</summary>
    /// <param name="eventTimes">Ages of the events, hours, above zero and not above the end.</param>
    /// <param name="end">End of observation, hours.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The estimate; <see cref="NotEstimableKind.TooFewEvents"/> where the formula's upper limit would not exist.</returns>
    /// <exception cref="ArgumentException">An event outside (0, end].</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 8.4.5.2.</remarks>
    public static Outcome<ReachedMtbf> Estimate(IReadOnlyList<double> eventTimes, double end, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var unit = new RecurrenceUnit(0, end, eventTimes);
        double n = unit.EventTimes.Count;
        var z = Quantile.NormalTwoSided(confidence);
        if (n < 2 || n <= z * z / 2)
        {
            return new NotEstimable(
                NotEstimableKind.TooFewEvents, (long)n, $"The limits at this confidence need more than {z * z / 2:F0} events.");
        }
        if (ConditionalExponent.Build([unit], Truncation.Time) is not { } conditional)
            return new NotEstimable(NotEstimableKind.NoFiniteMaximum, (long)n, "All events lie at the end of observation.");
        var exponent = conditional.Unbiased;
        var reached = end / (n * exponent);
        var lower = n + z * z / 4 + Math.Sqrt(n * z * z / 2 + z * z * z * z / 16);
        var upper = n - z * Math.Sqrt(n / 2);
        return new ReachedMtbf(
            exponent, n * Math.Pow(end, -exponent), reached,
            new Interval(reached * n * (n - 1) / (lower * lower), reached * n * (n - 1) / (upper * upper), confidence));
    }
}
