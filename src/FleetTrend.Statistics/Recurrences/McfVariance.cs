namespace FleetTrend.Statistics.Recurrences;

/// <summary>How the variance of a mean cumulative function was found.</summary>
public enum McfVariance
{
    /// <summary>Lawless and Nadeau: from the spread between units; assumes only that units are independent.</summary>
    Robust,

    /// <summary>
    /// From the count alone, as if events were a Poisson process. Used for a single unit, which has no spread between
    /// units to learn from.
    /// </summary>
    Poisson,

    /// <summary>
    /// Nelson: variances and covariances of the steps with the divisor units at risk less one, which makes them free of bias. It can fall
    /// with age or below zero where units leave, and does not exist where one unit is watched alone. Source: Nelson 1995.
    /// </summary>
    Unbiased,
}
