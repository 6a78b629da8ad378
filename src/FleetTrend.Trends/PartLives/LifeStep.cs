namespace FleetTrend.Trends.PartLives;

/// <summary>An interval of age that holds probability of failure; where within it, the data do not say.</summary>
/// <param name="Lower">Open lower end, hours on the part.</param>
/// <param name="Upper">Closed upper end; null where unbounded.</param>
/// <param name="Mass">Probability in it.</param>
/// <param name="Cdf">Probability of failure by its upper end.</param>
public sealed record LifeStep(double Lower, double? Upper, double Mass, double Cdf);
