namespace FleetTrend.Statistics.Recurrences;

/// <summary>The scale on which pointwise limits of a mean cumulative function are set.</summary>
public enum McfLimits
{
    /// <summary>On the logarithm: value times exp(±z·se/value). Never below zero; better for few units.</summary>
    Logarithmic,

    /// <summary>On the number itself: value ± z·se. The lower limit may be negative.</summary>
    Plain,
}
