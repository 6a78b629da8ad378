namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The distribution of z = (ln t - mu) / sigma. Every family here is a location-scale family in ln t, so that one optimiser, one profile and
/// one set of functions serve all. With tau = -ln sigma, z = exp(tau) (ln t - mu).
/// </summary>
/// <remarks>Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, chapter 4.</remarks>
internal abstract class StandardDistribution
{
    internal static StandardDistribution Select(LifeDistribution distribution) => distribution switch
    {
        LifeDistribution.Weibull or LifeDistribution.Exponential => StandardSmallestExtremeValue.Instance,
        LifeDistribution.Lognormal => StandardNormal.Instance,
        LifeDistribution.Loglogistic => StandardLogistic.Instance,
        _ => throw new ArgumentOutOfRangeException(nameof(distribution), distribution, "Not a life distribution."),
    };

    /// <summary>Log density of z.</summary>
    internal abstract DerivativesAt LogDensity(double z);

    /// <summary>Log of the probability that a life exceeds z.</summary>
    internal abstract DerivativesAt LogSurvival(double z);

    /// <summary>Log of the probability that a life does not exceed z.</summary>
    internal abstract DerivativesAt LogCdf(double z);

    /// <summary>Log of the hazard accumulated to z, ln(-ln S).</summary>
    internal virtual DerivativesAt LogCumulativeHazard(double z)
    {
        var survival = LogSurvival(z);
        if (!(survival.Value < -1e-16)) return LogCdf(z); // the same to all digits, and it does not underflow
        var ratio = survival.First / survival.Value;
        return new DerivativesAt(Math.Log(-survival.Value), ratio, (survival.Second / survival.Value) - (ratio * ratio));
    }

    /// <summary>The z that a life exceeds with the probability whose log is <paramref name="logSurvival"/>, below 0.</summary>
    internal abstract double ZOfLogSurvival(double logSurvival);

    /// <summary>
    /// Whether the likelihood of these lives, at a given shape, has one maximum in mu and no other. It has for distributions whose hazard, or its
    /// logarithm, makes every term concave in mu or in a function of it that rises, late entry or not.
    /// </summary>
    internal virtual bool HasOneHill(LifeArrays lives) => true;

    /// <summary>The log-likelihood of all lives at (mu, tau), with gradient and Hessian.</summary>
    internal abstract LikelihoodPoint LogLikelihood(LifeArrays lives, double mu, double tau);
}
