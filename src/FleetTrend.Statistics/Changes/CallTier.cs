namespace FleetTrend.Statistics.Changes;

/// <summary>A limit of the score and what it stands for.</summary>
/// <param name="AllowedPerYear">New false calls per unit-year that may come, over all classes together.</param>
/// <param name="LogLimit">Logarithm of the score at which a call begins; positive infinity where none can be stated.</param>
/// <param name="PerYear">New false calls per unit-year at this limit, in the simulation.</param>
/// <param name="PerYearError">Monte Carlo standard error of that.</param>
public sealed record CallTier(double AllowedPerYear, double LogLimit, double PerYear, double PerYearError);
