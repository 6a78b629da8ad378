namespace FleetTrend.Statistics.Lives;

/// <summary>The product-limit estimate just after one age at which lives failed.</summary>
public sealed record KaplanMeierPoint
{
    /// <summary>Hours.</summary>
    public required double Age { get; init; }

    /// <summary>Lives under observation and good just before the age.</summary>
    public required double AtRisk { get; init; }

    /// <summary>Lives that failed at the age.</summary>
    public required double Failures { get; init; }

    /// <summary>Probability of surviving beyond the age.</summary>
    public required double Survival { get; init; }

    /// <summary>Greenwood's standard error of the survival.</summary>
    public required double StandardError { get; init; }

    /// <summary>Nelson-Aalen cumulative hazard.</summary>
    public required double CumulativeHazard { get; init; }

    /// <summary>Its standard error (sum of failures over squared lives at risk).</summary>
    public required double CumulativeHazardStandardError { get; init; }

    /// <summary>
    /// Cumulative hazard with failures at one age taken one after another, each from those left: sum of 1/n, 1/(n - 1), ...; equal to the
    /// Nelson-Aalen hazard without ties. Source: Fleming and Harrington 1984.
    /// </summary>
    public required double FlemingHarringtonHazard { get; init; }

    /// <summary>Survival -/+ z standard errors, cut to [0, 1]. For large numbers only.</summary>
    public required Interval PlainLimits { get; init; }

    /// <summary>Limits on the scale of ln S, the upper cut to 1.</summary>
    public required Interval LogLimits { get; init; }

    /// <summary>Limits on the scale of ln(-ln S): inside (0, 1), good from about 20 lives on.</summary>
    public required Interval LogLogLimits { get; init; }

    /// <summary>Limits on the scale of ln(S / (1 - S)): inside (0, 1). Source: Meeker and Escobar 1998, section 3.6.</summary>
    public required Interval LogitLimits { get; init; }

    /// <summary>
    /// Limits on the scale of arcsin of the root of S. Source: Borgan and Liestoel 1990 (from memory); Klein and Moeschberger
    /// 1997, section 4.3.
    /// </summary>
    public required Interval ArcsineLimits { get; init; }

    /// <summary>
    /// Small-sample limits by products of beta variables: exactly the Clopper-Pearson binomial limits where nothing was censored before
    /// the age, and close to exact with censoring.
    /// </summary>
    public required Interval ExactLimits { get; init; }
}
