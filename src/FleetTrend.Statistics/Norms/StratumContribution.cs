namespace FleetTrend.Statistics.Norms;

/// <summary>What one stratum adds to a unit's standing.</summary>
/// <param name="Stratum">The stratum's key.</param>
/// <param name="Observed">The unit's events.</param>
/// <param name="ExposureHours">The unit's hours.</param>
/// <param name="OthersEvents">Events of the other units.</param>
/// <param name="OthersExposureHours">Hours of the other units, above zero.</param>
/// <param name="Expected">Events the unit would have had at the others' rate.</param>
/// <param name="UpperPValue">Exact chance, at one common rate, of at least the events seen, given the stratum's total.</param>
public sealed record StratumContribution(
    string Stratum, int Observed, double ExposureHours, long OthersEvents, double OthersExposureHours, double Expected,
    double UpperPValue)
{
    /// <summary>Observed less expected: the strata with the largest drive the unit's standing.</summary>
    public double Excess => Observed - Expected;
}
