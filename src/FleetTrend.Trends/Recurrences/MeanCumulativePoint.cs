namespace FleetTrend.Trends.Recurrences;

/// <summary>A point of a mean cumulative function.</summary>
/// <param name="Hours">Time in service at which events were found.</param>
/// <param name="AtRisk">Aircraft watched at that time.</param>
/// <param name="Events">Events found at that time.</param>
/// <param name="Value">Mean number of events per aircraft up to and including that time.</param>
/// <param name="StandardError">Robust standard error (Lawless and Nadeau 1995).</param>
/// <param name="Lower">Lower limit, at the snapshot's confidence.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record MeanCumulativePoint(
    double Hours, int AtRisk, int Events, double Value, double StandardError, double Lower, double Upper);
