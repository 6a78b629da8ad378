using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Groups;

/// <summary>
/// All exposure and events of one type group, by location and aircraft. Each segment and event belongs to the group that
/// the aircraft was in at that time, so an aircraft that changed group is in both, each with its own hours.
/// </summary>
internal sealed class TypeGroupObservations
{
    private readonly Dictionary<string, LocationObservations> byLocation;

    private TypeGroupObservations(string typeGroup, IReadOnlyList<LocationObservations> locations)
    {
        TypeGroup = typeGroup;
        Locations = locations;
        byLocation = locations.ToDictionary(l => l.Location, StringComparer.Ordinal);
        Conditions = [.. locations.SelectMany(l => l.Conditions).Distinct().Order()];
    }

    /// <summary>The type group.</summary>
    public string TypeGroup { get; }

    /// <summary>Its locations, by path.</summary>
    public IReadOnlyList<LocationObservations> Locations { get; }

    /// <summary>Conditions seen anywhere in it.</summary>
    public IReadOnlyList<Condition> Conditions { get; }

    /// <summary>The location of that path; every event and exposure of the group is at one.</summary>
    public LocationObservations At(string location) => byLocation[location];

    /// <summary>Locations where a condition makes sense: those whose hours count for it.</summary>
    public IEnumerable<LocationObservations> Where(Condition condition) => Locations.Where(l => l.CanHave(condition));

    /// <summary>Sorts what was observed in a type group by location.</summary>
    public static TypeGroupObservations Sort(string typeGroup, IReadOnlyList<AircraftObservations> aircraft)
    {
        var exposures = aircraft.SelectMany(o => o.Exposures).Where(e => e.TypeGroup == typeGroup).ToLookup(e => e.Location, StringComparer.Ordinal);
        var events = aircraft.SelectMany(o => o.Events).Where(e => e.TypeGroup == typeGroup).ToLookup(e => e.Location, StringComparer.Ordinal);
        return new TypeGroupObservations(typeGroup, [.. exposures.Select(g => g.Key).Union(events.Select(g => g.Key), StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(location => At(location, exposures[location], events[location]))]);
    }

    private static LocationObservations At(
        string location, IEnumerable<LocationExposure> exposures, IEnumerable<LocationEvent> events)
    {
        var exposuresOf = exposures.ToLookup(e => e.Registration, StringComparer.Ordinal);
        var eventsOf = events.ToLookup(e => e.Registration, StringComparer.Ordinal);
        var aircraft = exposuresOf.Select(g => g.Key).Union(eventsOf.Select(g => g.Key), StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(r => new AircraftAtLocation(r, exposuresOf[r], eventsOf[r]))
            .ToList();
        var kind = exposuresOf.SelectMany(g => g).Select(e => e.Kind).Concat(eventsOf.SelectMany(g => g).Select(e => e.Kind)).First();
        return new LocationObservations(location, kind, aircraft);
    }
}
