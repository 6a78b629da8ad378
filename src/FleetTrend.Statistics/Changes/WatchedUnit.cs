namespace FleetTrend.Statistics.Changes;

/// <summary>What was looked at on a unit (aircraft, base, part number, type group) and what was found, period by period.</summary>
public sealed class WatchedUnit
{
    private readonly double[] cumulative;
    private readonly bool[] isWatched;
    private readonly int locations;

    /// <summary>Makes it.</summary>
    /// <param name="name">Name of the unit.</param>
    /// <param name="firstPeriod">The first period in which it was watched; exposure of earlier ones is zero.</param>
    /// <param name="exposure">
    /// Exposure that looks of a period closed, by period from the first, then by location: hours, or the rise of the cumulative hazard; zero or more.
    /// </param>
    /// <param name="findings">Findings, in any order.</param>
    /// <exception cref="ArgumentException">A period has another number of locations, or a finding lies outside.</exception>
    public WatchedUnit(string name, int firstPeriod, IReadOnlyList<double[]> exposure, IEnumerable<UnitFinding> findings)
    {
        Name = name;
        FirstPeriod = firstPeriod;
        LastPeriod = firstPeriod + exposure.Count - 1;
        locations = exposure.Count == 0 ? 0 : exposure[0].Length;
        cumulative = new double[(exposure.Count + 1) * locations];
        isWatched = new bool[exposure.Count];
        for (var p = 0; p < exposure.Count; p++)
        {
            var values = exposure[p];
            if (values.Length != locations)
                throw new ArgumentException("Every period must have the same locations.", nameof(exposure));
            for (var l = 0; l < locations; l++)
            {
                if (!(values[l] >= 0) || double.IsInfinity(values[l]))
                    throw new ArgumentException($"Exposure must be finite, zero or more; got {values[l]}.", nameof(exposure));
                isWatched[p] |= values[l] > 0;
                cumulative[(p + 1) * locations + l] = cumulative[p * locations + l] + values[l];
            }
        }

        Findings = [.. findings.OrderBy(f => f.Period).ThenBy(f => f.Location)];
        if (Findings.Any(f => f.Period < FirstPeriod || f.Period > LastPeriod || f.Location < 0 || f.Location >= locations))
            throw new ArgumentException("A finding must lie in a watched period and location.", nameof(findings));
    }

    /// <summary>Name of the unit.</summary>
    public string Name { get; }

    /// <summary>The first period in which it was watched.</summary>
    public int FirstPeriod { get; }

    /// <summary>The last period in which it was watched.</summary>
    public int LastPeriod { get; }

    /// <summary>Findings by period.</summary>
    public IReadOnlyList<UnitFinding> Findings { get; }

    /// <summary>Number of locations.</summary>
    public int Locations => locations;

    /// <summary>Exposure by location that looks of a period closed; zero outside the watched periods.</summary>
    public double[] ExposureIn(int period)
    {
        var values = Until(period).ToArray();
        var before = Until(period - 1);
        for (var l = 0; l < values.Length; l++)
            values[l] = period < FirstPeriod || period > LastPeriod ? 0 : Math.Max(0, values[l] - before[l]);
        return values;
    }

    /// <summary>Exposure of all locations together from the beginning of a period on.</summary>
    public double ExposureSince(int period)
    {
        var now = Until(LastPeriod);
        var before = Until(period - 1);
        var sum = 0.0;
        for (var l = 0; l < locations; l++)
            sum += now[l] - before[l];
        return sum;
    }

    /// <summary>Whether anything was looked at in a period.</summary>
    internal bool IsWatched(int period) => period >= FirstPeriod && period <= LastPeriod && isWatched[period - FirstPeriod];

    /// <summary>Exposure by location up to the end of a period.</summary>
    internal ReadOnlySpan<double> Until(int period) =>
        cumulative.AsSpan((Math.Clamp(period, FirstPeriod - 1, LastPeriod) - FirstPeriod + 1) * locations, locations);
}
