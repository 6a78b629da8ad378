using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Limits of the factor lambda of a power law, mean count lambda · t^exponent, of units that share it: with the exponent known, and
/// together with the exponent.
/// </summary>
public static class PowerLawLambda
{
    /// <summary>Lambda with the exponent taken as known: events over the sum of stop^exponent - start^exponent, exact Poisson limits.</summary>
    /// <param name="units">The units, with any windows.</param>
    /// <param name="exponent">The known exponent, finite, above zero.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>Events per hour to the power of the exponent (without events 0 with an upper limit), or <see cref="NotEstimableKind.NothingObserved"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The exponent or the confidence is outside its range.</exception>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, section 3.4; Garwood 1936.</remarks>
    public static Outcome<IntervalEstimate> GivenExponent(IReadOnlyList<RecurrenceUnit> units, double exponent, double confidence = 0.95)
    {
        if (!(exponent > 0 && double.IsFinite(exponent)))
            throw new ArgumentOutOfRangeException(nameof(exponent), exponent, "An exponent is finite and above zero.");
        var events = units.Sum(u => u.EventTimes.Count);
        var limits = GarwoodInterval.Estimate(events, confidence);
        var used = Used(units, exponent);
        if (!(used > 0))
            return new NotEstimable(NotEstimableKind.NothingObserved, events, "No unit was under observation for any time.");
        return new IntervalEstimate(events / used, new Interval(limits.Lower / used, limits.Upper / used, confidence));
    }

    /// <summary>
    /// Limits of lambda that hold together with the exact limits of the exponent: each pair at the stated confidence, both at no less than
    /// its square.
    /// </summary>
    /// <param name="units">Units watched from age zero without a gap.</param>
    /// <param name="confidence">Two-sided confidence of each, in (0, 1).</param>
    /// <returns>The limits; <see cref="NotEstimableKind.NoInformation"/> with late entry or gaps, where the exponent has no exact limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, section 3.4.</remarks>
    public static Outcome<Interval> Simultaneous(IReadOnlyList<RecurrenceUnit> units, double confidence = 0.95) =>
        PowerLawProcess.Fit(units, confidence).Then<Interval>(fit =>
        {
            if (fit.IntervalMethod != PowerLawInterval.ExactChiSquare)
            {
                return new NotEstimable(
                    NotEstimableKind.NoInformation, fit.Events, "Defined only for units watched from age zero without a gap.");
            }

            // The sum of stop^exponent rises or falls with the exponent, as ages are above or below one.
            var counts = GarwoodInterval.Estimate((int)fit.Events, confidence);
            var (one, other) = (Used(units, fit.ExponentInterval.Lower), Used(units, fit.ExponentInterval.Upper));
            return new Interval(counts.Lower / Math.Max(one, other), counts.Upper / Math.Min(one, other), confidence);
        });

    private static double Used(IReadOnlyList<RecurrenceUnit> units, double exponent) =>
        units.Sum(u => u.Windows.Sum(w => Math.Pow(w.Stop, exponent) - Math.Pow(w.Start, exponent)));
}
