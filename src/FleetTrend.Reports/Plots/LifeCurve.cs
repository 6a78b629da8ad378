using FleetTrend.Trends.PartLives;

namespace FleetTrend.Reports.Plots;

/// <summary>One curve of a plot of part lives.</summary>
/// <param name="Label">Where the parts are, and their counts.</param>
/// <param name="Steps">Non-parametric estimate.</param>
/// <param name="WeibullShape">Shape of the fitted Weibull distribution; null where there is none.</param>
/// <param name="WeibullScaleHours">Its scale in hours.</param>
public sealed record LifeCurve(string Label, IReadOnlyList<LifeStep> Steps, double? WeibullShape, double? WeibullScaleHours);
