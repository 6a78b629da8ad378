namespace FleetTrend.Statistics.Recurrences;

/// <summary>The scale on which pointwise limits of a mean cumulative function are set.</summary>
public enum McfLimits
{
    /// <summary>On the logarithm: value times exp(±z·se/value). Never below zero; better for few units.</summary>
    Logarithmic,

    /// <summary>
    /// On the logarithm with Student's t in place of the normal quantile (degrees of freedom: units at risk less one) and the
    /// divisor units less one in the variance: for few units, where the other two hold the truth too seldom.
    /// </summary>
    LogarithmicStudent,

    /// <summary>On the number itself: value ± z·se. The lower limit may be negative.</summary>
    Plain,
}
