using System.Text.Json.Serialization;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Cli.Analysis;

/// <summary>A fitted distribution: shape and scale, or mu and sigma for the lognormal.</summary>
internal sealed record LifeFitValues
{
    private static readonly double[] Probabilities = [0.01, 0.1, 0.5, 0.9];

    /// <summary>weibull, lognormal, exponential or loglogistic.</summary>
    public required string Distribution { get; init; }

    /// <summary>Shape; 1 for the exponential.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Shape { get; init; }

    /// <summary>Scale.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Scale { get; init; }

    /// <summary>Mean of ln t, lognormal.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Mu { get; init; }

    /// <summary>Standard deviation of ln t, lognormal.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Sigma { get; init; }

    /// <summary>Maximised log-likelihood.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Akaike's criterion.</summary>
    public required double Aic { get; init; }

    /// <summary>Profile-likelihood intervals by parameter.</summary>
    public required IReadOnlyDictionary<string, Range> Intervals { get; init; }

    /// <summary>Ages by which shares have failed.</summary>
    public required IReadOnlyList<LifeQuantileRow> Quantiles { get; init; }

    /// <summary>From a fit.</summary>
    public static LifeFitValues Build(LifeFit fit)
    {
        var isLognormal = fit.Distribution == LifeDistribution.Lognormal;
        return new LifeFitValues
        {
            Distribution = Name(fit.Distribution),
            Shape = isLognormal ? null : fit.Model.Shape,
            Scale = isLognormal ? null : fit.Model.Scale,
            Mu = isLognormal ? fit.Model.Mu : null,
            Sigma = isLognormal ? fit.Model.Sigma : null,
            LogLikelihood = fit.LogLikelihood,
            Aic = fit.Aic,
            Intervals = fit.Parameters.ToDictionary(p => p.Name, p => Range.Build(p.Interval), StringComparer.Ordinal),
            Quantiles = [.. Probabilities.Select(p => Quantile(fit, p))],
        };
    }

    /// <summary>The distribution's name in JSON.</summary>
    public static string Name(LifeDistribution distribution) => distribution switch
    {
        LifeDistribution.Weibull => "weibull",
        LifeDistribution.Lognormal => "lognormal",
        LifeDistribution.Exponential => "exponential",
        _ => "loglogistic",
    };

    private static LifeQuantileRow Quantile(LifeFit fit, double p)
    {
        var quantile = fit.Quantile(p);
        return new LifeQuantileRow(p, quantile.Value, JsonOutput.Finite(quantile.Interval.Lower), JsonOutput.Finite(quantile.Interval.Upper));
    }
}
