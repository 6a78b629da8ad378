namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// The interval at which renewing a unit costs least, when each failure in between is repaired and leaves the unit as old
/// as it was (power law).
/// </summary>
/// <param name="Interval">Best interval, hours.</param>
/// <param name="CostPerHour">Long-run cost per hour at that interval.</param>
/// <param name="Repairs">Expected repairs in one interval.</param>
public sealed record BlockReplacement(double Interval, double CostPerHour, double Repairs)
{
    /// <summary>Finds the best interval.</summary>
    /// <param name="exponent">Exponent of the power law.</param>
    /// <param name="scale">Age by which a unit expects one event, hours, above zero.</param>
    /// <param name="renewalCost">Cost of a renewal, above zero.</param>
    /// <param name="repairCost">Cost of a repair, above zero.</param>
    /// <returns>The interval; <see cref="NotEstimableKind.NoFiniteMaximum"/> where the exponent is one or less and renewal never pays.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A cost or the scale is not finite and above zero.</exception>
    /// <remarks>Source: Barlow and Hunter 1960, Operations Research 8.</remarks>
    public static Outcome<BlockReplacement> Optimum(double exponent, double scale, double renewalCost, double repairCost)
    {
        AgeReplacement.CheckCost(renewalCost, nameof(renewalCost));
        AgeReplacement.CheckCost(repairCost, nameof(repairCost));
        AgeReplacement.CheckCost(scale, nameof(scale));
        if (exponent <= 1)
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum, 0, "The unit does not get worse with age: renewing it never pays.");
        }
        var repairs = renewalCost / (repairCost * (exponent - 1));
        var interval = scale * Math.Pow(repairs, 1 / exponent);
        return new BlockReplacement(interval, (renewalCost + repairCost * repairs) / interval, repairs);
    }
}
