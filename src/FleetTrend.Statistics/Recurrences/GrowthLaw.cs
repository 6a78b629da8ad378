namespace FleetTrend.Statistics.Recurrences;

/// <summary>How the rate of a recurring event moves with its clock.</summary>
public enum GrowthLaw
{
    /// <summary>Rate proportional to exp(growth · time): no trend at a growth of zero (Cox and Lewis 1966).</summary>
    LogLinear = 0,

    /// <summary>Mean count proportional to time^growth, the power-law process: no trend at a growth of one (Crow 1975).</summary>
    PowerLaw = 1,
}
