using FleetTrend.Statistics.Changes;

namespace FleetTrend.Trends.Expectations;

/// <summary>Looks of one class added up by unit, location and period, one look at a time: a list of them would take the memory of all records.</summary>
internal sealed class LooksByUnit(HoursCalendar calendar)
{
    private readonly Dictionary<string, Dictionary<string, AtLocation>> units = new(StringComparer.Ordinal);
    private AtLocation? latest;
    private string? latestUnit;

    /// <summary>Findings.</summary>
    public int Found { get; private set; }

    /// <summary>Adds a look.</summary>
    public void Add(string unit, in WatchedLook look)
    {
        // Looks of a location come one after the other.
        if (latest is null || latestUnit != unit || latest.Location != look.Location)
            (latest, latestUnit) = (At(unit, look.Location), unit);
        latest.Add(calendar.PeriodOf(look.Date), look.Exposure, look.Found);
        Found += look.Found;
    }

    /// <summary>Locations, by path.</summary>
    public IReadOnlyList<string> Locations() =>
        [.. units.Values.SelectMany(u => u.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The units, by name.</summary>
    /// <param name="locations">The locations, in the order of their indices.</param>
    public IEnumerable<WatchedUnit> Units(IReadOnlyList<string> locations)
    {
        foreach (var (name, places) in units.OrderBy(u => u.Key, StringComparer.Ordinal))
        {
            var (first, last) = (places.Values.Min(p => p.First), places.Values.Max(p => p.Last));
            var exposure = new double[last - first + 1][];
            for (var p = 0; p < exposure.Length; p++)
                exposure[p] = new double[locations.Count];
            var findings = new List<UnitFinding>();
            for (var l = 0; l < locations.Count; l++)
            {
                if (!places.TryGetValue(locations[l], out var there))
                    continue;
                for (var p = there.First; p <= there.Last; p++)
                    exposure[p - first][l] = there.Exposure[p];
                findings.AddRange(there.Findings.Select(p => new UnitFinding(p, l)));
            }

            yield return new WatchedUnit(name, first, exposure, findings);
        }
    }

    private AtLocation At(string unit, string location)
    {
        if (!units.TryGetValue(unit, out var places))
            units.Add(unit, places = new(StringComparer.Ordinal));
        if (!places.TryGetValue(location, out var there))
            places.Add(location, there = new AtLocation(location, calendar.Periods));
        return there;
    }

    private sealed class AtLocation(string location, int periods)
    {
        public string Location { get; } = location;

        public double[] Exposure { get; } = new double[periods];

        public List<int> Findings { get; } = [];

        public int First { get; private set; } = int.MaxValue;

        public int Last { get; private set; } = -1;

        public void Add(int period, double exposure, int found)
        {
            Exposure[period] += exposure;
            (First, Last) = (Math.Min(First, period), Math.Max(Last, period));
            for (var n = 0; n < found; n++)
                Findings.Add(period);
        }
    }
}
