using MathNet.Numerics;

namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// The age at which renewing a part costs least in the long run, when a renewal before failure costs less than a failure
/// and a failed part is renewed at once.
/// </summary>
/// <param name="Age">Best age, hours; positive infinity where running to failure costs least.</param>
/// <param name="CostPerHour">Long-run cost per hour at that age.</param>
/// <param name="RunToFailureCostPerHour">Long-run cost per hour without planned renewal.</param>
/// <param name="FailureChance">Chance that a part fails before its planned renewal.</param>
public sealed record AgeReplacement(double Age, double CostPerHour, double RunToFailureCostPerHour, double FailureChance)
{
    /// <summary>Beyond so many scales an optimum is no age that anyone will see; it is reported as run to failure.</summary>
    private const double ScalesBeyondUse = 1e6;

    /// <summary>Whether no planned renewal pays.</summary>
    public bool RunToFailure => double.IsInfinity(Age);

    /// <summary>Finds the best age.</summary>
    /// <param name="life">The part's life; with a shape of one or less old parts are no worse than new and no age pays.</param>
    /// <param name="plannedCost">Cost of a renewal before failure, above zero.</param>
    /// <param name="failureCost">Cost of a failure and the renewal after it, above zero.</param>
    /// <returns>The best age.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A cost is not finite and above zero.</exception>
    /// <remarks>Source: Barlow and Proschan 1965, Mathematical Theory of Reliability, chapter 3.</remarks>
    public static AgeReplacement Optimum(WeibullLife life, double plannedCost, double failureCost)
    {
        CheckCost(plannedCost, nameof(plannedCost));
        CheckCost(failureCost, nameof(failureCost));
        var toFailure = failureCost / life.Mean;
        if (life.Shape <= 1 || failureCost <= plannedCost)
            return new AgeReplacement(double.PositiveInfinity, toFailure, toFailure, 1);

        var target = plannedCost / (failureCost - plannedCost);
        double Gap(double logAge)
        {
            var age = Math.Exp(logAge);
            var hazard = life.Shape / age * life.CumulativeHazard(age);
            return hazard * MeanUpTo(life, age) + ElementaryFunctions.ExpM1(-life.CumulativeHazard(age)) - target;
        }

        var high = Math.Log(life.Scale * ScalesBeyondUse);
        if (Gap(high) < 0)
            return new AgeReplacement(double.PositiveInfinity, toFailure, toFailure, 1);
        var best = Math.Exp(RootSearch.Find(Gap, Math.Log(life.Scale) - 700 / life.Shape, high));
        return new AgeReplacement(best, CostPerHourAt(life, plannedCost, failureCost, best), toFailure, life.FailsWithin(0, best));
    }

    /// <summary>Long-run cost per hour of renewing at an age.</summary>
    /// <param name="life">The part's life.</param>
    /// <param name="plannedCost">Cost of a renewal before failure.</param>
    /// <param name="failureCost">Cost of a failure.</param>
    /// <param name="age">Age of planned renewal, hours, above zero.</param>
    /// <returns>Cost per hour.</returns>
    /// <remarks>Source: Barlow and Proschan 1965, chapter 3: expected cost over expected length of a cycle.</remarks>
    public static double CostPerHourAt(WeibullLife life, double plannedCost, double failureCost, double age)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(age);
        var fails = life.FailsWithin(0, age);
        return (failureCost * fails + plannedCost * (1 - fails)) / MeanUpTo(life, age);
    }

    /// <summary>Mean hours a part runs when it is taken out at an age at the latest.</summary>
    private static double MeanUpTo(WeibullLife life, double age) =>
        life.Mean * SpecialFunctions.GammaLowerRegularized(1 / life.Shape, life.CumulativeHazard(age));

    internal static void CheckCost(double cost, string name)
    {
        if (!(cost > 0) || double.IsInfinity(cost))
            throw new ArgumentOutOfRangeException(name, cost, "A cost is finite and above zero.");
    }
}
