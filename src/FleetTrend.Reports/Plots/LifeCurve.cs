using FleetTrend.Trends.PartLives;

namespace FleetTrend.Reports.Plots;

/// <summary>One curve of a plot of part lives.</summary>
/// <param name="Label">Where the parts are, and their counts.</param>
/// <param name="Steps">Non-parametric estimate.</param>
/// <param name="Fit">The fitted law that is shown; null where there is none.</param>
/// <param name="FromHours">Youngest age at which a life was followed.</param>
/// <param name="ToHours">Oldest age at which a life was followed; nothing is drawn beyond.</param>
public sealed record LifeCurve(
    string Label, IReadOnlyList<LifeStep> Steps, LifeDistributionFit? Fit, double FromHours, double ToHours);
