namespace FleetTrend.Statistics.Norms;

/// <summary>One unit against the norm of the others.</summary>
/// <param name="Unit">The unit's key.</param>
/// <param name="Observed">Its events, over the strata in which others were observed too.</param>
/// <param name="ExposureHours">Its hours there.</param>
/// <param name="Expected">Events it would have had at the others' rates.</param>
/// <param name="UpperPValue">
/// Exact chance of at least the events seen, were its rates the others', given every stratum's total: small for a unit
/// with too many.
/// </param>
/// <param name="LowerPValue">Exact chance of at most the events seen: small for a unit that is too quiet.</param>
/// <param name="Contributions">One entry per stratum, largest excess first.</param>
public sealed record UnitStanding(
    string Unit, int Observed, double ExposureHours, double Expected, double UpperPValue, double LowerPValue,
    IReadOnlyList<StratumContribution> Contributions);
