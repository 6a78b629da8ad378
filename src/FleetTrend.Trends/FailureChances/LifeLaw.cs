using System.Text.Json.Serialization;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.FailureChances;

/// <summary>The life distribution behind the chances of a kind of part.</summary>
/// <param name="Kind">Name of the kind.</param>
/// <param name="Base">The base that has a distribution of its own, since its parts last differently; null for all others.</param>
/// <param name="Distribution">Its name: <c>Weibull</c>, <c>lognormal</c>.</param>
/// <param name="Failures">Failures in the fit.</param>
/// <param name="Lives">Lives in the fit.</param>
public sealed record LifeLaw(string Kind, string? Base, string Distribution, int Failures, int Lives)
{
    /// <summary>The distribution with its covariance; null in trends stored before it was kept.</summary>
    public LifeEstimate? Estimate { get; init; }

    /// <summary>The fit; null in what was stored.</summary>
    [JsonIgnore]
    internal LifeFit? Fit { get; init; }

    /// <summary>The lives behind it; null in what was stored.</summary>
    [JsonIgnore]
    internal FittedLives? Behind { get; init; }
}
