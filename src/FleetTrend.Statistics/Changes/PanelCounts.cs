namespace FleetTrend.Statistics.Changes;

/// <summary>Findings of all units of a panel, added up by period and location: the norm at any time, each unit left out of its own.</summary>
internal sealed class PanelCounts
{
    // Half a finding more: before any is seen, the norm is low and not zero.
    private const double Half = 0.5;

    private readonly WatchedPanel panel;
    private readonly int[] cumulative;

    public PanelCounts(WatchedPanel panel, IReadOnlyList<IReadOnlyList<UnitFinding>> findings)
    {
        this.panel = panel;
        cumulative = new int[panel.Periods * panel.Locations];
        foreach (var unit in findings)
        {
            foreach (var finding in unit)
                cumulative[finding.Period * panel.Locations + finding.Location]++;
        }

        for (var i = panel.Locations; i < cumulative.Length; i++)
            cumulative[i] += cumulative[i - panel.Locations];
    }

    /// <summary>Rate of each location on the other units, as known at the end of a period. False where the others were not watched.</summary>
    /// <param name="period">The period.</param>
    /// <param name="ownExposure">Exposure of the unit left out.</param>
    /// <param name="ownFound">Its findings by location.</param>
    /// <param name="rates">Takes the rates.</param>
    /// <remarks>
    /// Posterior mean of a gamma distribution of locations' rates, so that a location where the others had nothing yet has no rate of zero.
    /// Source: conjugacy of gamma and Poisson, Gelman et al. 2013, Bayesian Data Analysis, section 2.6.
    /// </remarks>
    public bool TryRates(int period, ReadOnlySpan<double> ownExposure, ReadOnlySpan<int> ownFound, Span<double> rates)
    {
        var all = panel.Until(period);
        var counts = cumulative.AsSpan(period * panel.Locations, panel.Locations);
        var (found, exposure) = (Half, 0.0);
        for (var l = 0; l < rates.Length; l++)
        {
            found += counts[l] - ownFound[l];
            exposure += Math.Max(0, all[l] - ownExposure[l]);
        }

        if (!(exposure > 1e-9 * (1e-300 + Sum(all))))
            return false;
        var shape = panel.LocationShape;
        var scale = shape * exposure / found;
        for (var l = 0; l < rates.Length; l++)
            rates[l] = (shape + counts[l] - ownFound[l]) / (scale + Math.Max(0, all[l] - ownExposure[l]));
        return true;
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return sum;
    }
}
