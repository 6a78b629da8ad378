namespace FleetTrend.Statistics.Lives;

/// <summary>The families of life distribution that can be fitted.</summary>
public enum LifeDistribution
{
    /// <summary>Weibull: S(t) = exp(-(t/scale)^shape).</summary>
    Weibull,

    /// <summary>Lognormal: ln t is normal with mean mu and standard deviation sigma.</summary>
    Lognormal,

    /// <summary>Exponential: Weibull with shape 1, a constant hazard of 1/scale.</summary>
    Exponential,

    /// <summary>Loglogistic: S(t) = 1 / (1 + (t/scale)^shape).</summary>
    Loglogistic,
}
