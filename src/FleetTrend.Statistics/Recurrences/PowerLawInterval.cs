namespace FleetTrend.Statistics.Recurrences;

/// <summary>How the interval of a power-law exponent was found.</summary>
public enum PowerLawInterval
{
    /// <summary>
    /// Given each unit's number of events, twice the number times true over conditional exponent is chi-square: exact for
    /// units watched from age zero without a gap.
    /// </summary>
    ExactChiSquare,

    /// <summary>Where the profile log-likelihood has fallen by half the chi-square quantile.</summary>
    ProfileLikelihood,
}
