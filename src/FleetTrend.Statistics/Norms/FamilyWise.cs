namespace FleetTrend.Statistics.Norms;

/// <summary>
/// p-values adjusted so that the chance of even one false call among all is held; stricter than
/// <see cref="FalseDiscovery"/>.
/// </summary>
public static class FamilyWise
{
    /// <summary>Step-down adjustment, valid under any dependence.</summary>
    /// <param name="pValues">p-values in any order, each in [0, 1].</param>
    /// <returns>Adjusted p-values in the same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value is outside [0, 1].</exception>
    /// <remarks>Source: Holm 1979, Scandinavian Journal of Statistics 6.</remarks>
    public static IReadOnlyList<double> Holm(IReadOnlyList<double> pValues)
    {
        var p = Multiplicity.Checked(pValues);
        var order = Multiplicity.Ascending(p);
        var adjusted = new double[p.Length];
        var largest = 0.0;
        for (var rank = 0; rank < p.Length; rank++)
        {
            largest = Math.Max(largest, Math.Min(1, p[order[rank]] * (p.Length - rank)));
            adjusted[order[rank]] = largest;
        }
        return adjusted;
    }
}
