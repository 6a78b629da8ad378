using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>A distribution fitted to lives by maximum likelihood.</summary>
public sealed record LifeDistributionFit
{
    /// <summary>Name of the Weibull distribution.</summary>
    public const string Weibull = "Weibull";

    /// <summary>Name of the lognormal distribution.</summary>
    public const string Lognormal = "lognormal";

    /// <summary>Name: <c>Weibull</c>, <c>lognormal</c>.</summary>
    public required string Distribution { get; init; }

    /// <summary>First parameter: Weibull shape, or mean of the log life.</summary>
    public required Figure First { get; init; }

    /// <summary>Its name: <c>shape</c> or <c>mu</c>.</summary>
    public required string FirstName { get; init; }

    /// <summary>Second parameter: Weibull scale in hours, or standard deviation of the log life.</summary>
    public required Figure Second { get; init; }

    /// <summary>Its name: <c>scale</c> or <c>sigma</c>.</summary>
    public required string SecondName { get; init; }

    /// <summary>Log-likelihood at the maximum.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Akaike's criterion; smaller is better.</summary>
    public required double Aic { get; init; }

    /// <summary>Age by which one in ten has failed; no value where that lies outside the ages at which the data say anything.</summary>
    public required Figure B10 { get; init; }

    /// <summary>Age by which half have failed; no value where that lies outside the ages at which the data say anything.</summary>
    public required Figure Median { get; init; }

    /// <summary>Chance by this law that a new part fails within the look interval of its type group and kind; no value below the first failure.</summary>
    public required Figure FailureWithinLookAhead { get; init; }

    /// <summary>Share failed by an age in hours, by this law; null where a parameter has no value.</summary>
    public double? ShareFailedBy(double hours)
    {
        if (First.Value is not { } first || Second.Value is not { } second) return null;
        var law = Distribution == Lognormal
            ? new LifeModel(LifeDistribution.Lognormal, Math.Exp(first), 1 / second)
            : new LifeModel(LifeDistribution.Weibull, second, first);
        return law.Cdf(hours);
    }
}
