using FleetTrend.Observations;
using FleetTrend.Observations.Looks;

namespace FleetTrend.Trends.Quiet;

/// <summary>
/// Locations that are not examined: no look there for three look intervals and three inspections, while at least half of the others are examined
/// there. Where no aircraft of a base is and those elsewhere are, the base is asked and not each of its aircraft.
/// </summary>
internal sealed class NeverExamined
{
    private const int Intervals = 3;
    private const int Inspections = 3;

    // A base with one aircraft is that aircraft.
    private const int FewestAtABase = 2;

    private readonly Dictionary<string, List<UnexaminedLocation>> byAircraft = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<UnexaminedLocation>> byBase = new(StringComparer.Ordinal);

    private NeverExamined()
    {
    }

    /// <summary>Looks through the aircraft that fly in the type group.</summary>
    public static NeverExamined Find(TypeGroupInputs inputs)
    {
        var found = new NeverExamined();
        var told = inputs.Present.Where(a => a.RetiredDate is null && a.Visits.Count > 0)
            .SelectMany(a => a.Looks.Select(l => At(inputs, a, l)))
            .Where(p => p.IsExamined || p.IsMissed);
        foreach (var places in told.GroupBy(p => p.Looks.Location, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
            found.Add([.. places]);
        return found;
    }

    /// <summary>Of an aircraft, the longest first.</summary>
    public IReadOnlyList<UnexaminedLocation> OfAircraft(string registration) => byAircraft.GetValueOrDefault(registration, []);

    /// <summary>Of a base as a whole, the longest first.</summary>
    public IReadOnlyList<UnexaminedLocation> OfBase(string name) => byBase.GetValueOrDefault(name, []);

    private static Place At(TypeGroupInputs inputs, AircraftObservations aircraft, LocationLooks looks)
    {
        List<Visit> since = [.. aircraft.Visits.Where(v => looks.LastDate is not { } last || v.Date > last)];
        var from = looks.LastDate is { } day ? (aircraft.Hours.On(day) ?? aircraft.Visits[0].Hours).Value : aircraft.Visits[0].Hours.Value;
        var hours = since.Count == 0 ? 0 : Math.Max(0, since[^1].Hours.Value - from);
        var isLong = hours >= Intervals * inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, looks.Kind.Name);
        return new Place(aircraft, looks, since, hours, isLong && since.Count >= Inspections);
    }

    private void Add(IReadOnlyList<Place> places)
    {
        var (examined, missed) = (places.Count(p => p.IsExamined), places.Count(p => p.IsMissed));
        foreach (var atBase in places.GroupBy(p => p.Aircraft.Base, StringComparer.Ordinal))
        {
            List<Place> own = [.. atBase.Where(p => p.IsMissed)];
            var others = places.Count - atBase.Count();
            if (own.Count >= FewestAtABase && own.Count == atBase.Count() && examined > 0 && 2 * examined >= others)
            {
                Add(byBase, atBase.Key, Described(own, examined, others));
                continue;
            }

            foreach (var place in own.Where(_ => examined > 0 && examined >= missed - 1))
                Add(byAircraft, place.Aircraft.Registration, Described([place], examined, places.Count - 1));
        }
    }

    private static void Add(Dictionary<string, List<UnexaminedLocation>> to, string subject, UnexaminedLocation location)
    {
        if (!to.TryGetValue(subject, out var list))
            to.Add(subject, list = []);
        var at = list.FindIndex(l => l.Hours < location.Hours);
        list.Insert(at < 0 ? list.Count : at, location);
    }

    private static UnexaminedLocation Described(List<Place> places, int examined, int others) => new()
    {
        Location = places[0].Looks.Location,
        Kind = places[0].Looks.Kind.Name,
        LastLookDate = places.Max(p => p.Looks.LastDate),
        Hours = places.Sum(p => p.Hours),
        InspectionCount = places.Sum(p => p.Since.Count),
        OthersExamined = examined,
        OthersCount = others,
        Evidence = [.. places.SelectMany(p => p.Looks.Evidence.Concat(p.Since.SelectMany(v => v.Evidence))).Distinct()],
    };

    /// <summary>A location of an aircraft.</summary>
    /// <param name="Aircraft">The aircraft.</param>
    /// <param name="Looks">The looks there.</param>
    /// <param name="Since">Inspections since the last.</param>
    /// <param name="Hours">Hours without a look, until the newest of them.</param>
    /// <param name="IsMissed">Whether it was missed for long enough.</param>
    private sealed record Place(AircraftObservations Aircraft, LocationLooks Looks, IReadOnlyList<Visit> Since, double Hours, bool IsMissed)
    {
        /// <summary>Whether it is examined now and then.</summary>
        public bool IsExamined => Looks.LookCount > 0 && !IsMissed;
    }
}
