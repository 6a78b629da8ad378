namespace FleetTrend.Statistics.Decisions;

/// <summary>Chances of the states from one transition age up to the next.</summary>
/// <param name="Time">Age of transitions, hours.</param>
/// <param name="AtRisk">Units under observation in each state just before this age.</param>
/// <param name="Chances">Chance of each state after it; they sum to one.</param>
/// <param name="StandardErrors">Standard error of each chance.</param>
public sealed record StatePoint(
    double Time, IReadOnlyList<int> AtRisk, IReadOnlyList<double> Chances, IReadOnlyList<double> StandardErrors);
