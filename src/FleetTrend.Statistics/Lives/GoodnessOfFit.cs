namespace FleetTrend.Statistics.Lives;

/// <summary>How well a distribution fits the lives.</summary>
/// <param name="Distance">Largest distance between its cdf and the non-parametric estimate, in [0, 1].</param>
/// <param name="PValue">Share of drawn sets that lie as far off or farther; small means that the distribution does not fit.</param>
/// <param name="Replicates">Drawn sets behind it.</param>
public sealed record GoodnessOfFit(double Distance, double PValue, int Replicates);
