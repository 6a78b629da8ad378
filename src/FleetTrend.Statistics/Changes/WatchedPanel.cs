namespace FleetTrend.Statistics.Changes;

/// <summary>All like units in one class of condition, over the same periods.</summary>
public sealed class WatchedPanel
{
    private readonly double[] exposure;

    /// <summary>Makes it.</summary>
    /// <param name="periods">Number of periods.</param>
    /// <param name="periodYears">Length of a period, years.</param>
    /// <param name="scopes">Parts of a unit that may change by themselves.</param>
    /// <param name="units">The units; all have the same locations.</param>
    /// <exception cref="ArgumentException">Units differ in their locations, or lie outside the periods.</exception>
    public WatchedPanel(int periods, double periodYears, IReadOnlyList<ChangeScope> scopes, IReadOnlyList<WatchedUnit> units)
    {
        Periods = periods;
        PeriodYears = periodYears;
        Scopes = scopes;
        Units = units;
        Locations = units.Count == 0 ? 0 : units[0].Locations;
        if (units.Any(u => u.Locations != Locations || u.FirstPeriod < 0 || u.LastPeriod >= periods))
            throw new ArgumentException("Units must have the same locations and lie in the periods.", nameof(units));
        exposure = new double[periods * Locations];
        for (var p = 0; p < periods; p++)
        {
            foreach (var unit in units)
            {
                var own = unit.Until(p);
                for (var l = 0; l < own.Length; l++)
                    exposure[p * Locations + l] += own[l];
            }
        }

        LocationShape = ShapeOfLocations();
    }

    /// <summary>Number of periods.</summary>
    public int Periods { get; }

    /// <summary>Length of a period, years.</summary>
    public double PeriodYears { get; }

    /// <summary>Number of locations.</summary>
    public int Locations { get; }

    /// <summary>Parts of a unit that may change by themselves.</summary>
    public IReadOnlyList<ChangeScope> Scopes { get; }

    /// <summary>The units.</summary>
    public IReadOnlyList<WatchedUnit> Units { get; }

    /// <summary>Years that units were watched, added up.</summary>
    public double UnitYears => Units.Sum(u => u.LastPeriod - u.FirstPeriod + 1) * PeriodYears;

    /// <summary>Exposure of all units at a location, over all periods.</summary>
    public double ExposureAt(int location) => Periods == 0 ? 0 : Until(Periods - 1)[location];

    /// <summary>Shape of the gamma distribution of locations' rates: how much the rate of one location tells of another.</summary>
    internal double LocationShape { get; }

    /// <summary>Exposure of all units by location up to the end of a period.</summary>
    internal ReadOnlySpan<double> Until(int period) => exposure.AsSpan(period * Locations, Locations);

    private double ShapeOfLocations()
    {
        if (Periods == 0 || Locations < 2)
            return 1;
        var counts = new int[Locations];
        foreach (var finding in Units.SelectMany(u => u.Findings))
            counts[finding.Location]++;
        var last = Until(Periods - 1);
        var rates = new List<Norms.CountExposure>();
        for (var l = 0; l < Locations; l++)
        {
            if (last[l] > 0)
                rates.Add(new Norms.CountExposure(counts[l], last[l]));
        }

        return Norms.GammaPoissonFit.Fit(rates).Match(fit => Math.Clamp(fit.Shape, 0.3, 1000), _ => 1);
    }
}
