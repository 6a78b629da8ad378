using FleetTrend.Trends.PartLives;

namespace FleetTrend.Reports.Plots;

/// <summary>One curve of a plot of part lives.</summary>
/// <param name="Label">Where the parts are, and their counts.</param>
/// <param name="Steps">Non-parametric estimate.</param>
/// <param name="Fit">The fitted law that is shown; null where there is none.</param>
public sealed record LifeCurve(string Label, IReadOnlyList<LifeStep> Steps, LifeDistributionFit? Fit);
