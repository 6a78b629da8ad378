using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Trends.Groups;

/// <summary>One location of a type group: every aircraft that was watched there or had an event there.</summary>
internal sealed class LocationObservations
{
    /// <summary>Makes it; the aircraft are in order of registration.</summary>
    public LocationObservations(string location, LocationKind kind, IReadOnlyList<AircraftAtLocation> aircraft)
    {
        Location = location;
        Kind = kind;
        Aircraft = aircraft;
        Conditions = [.. aircraft.SelectMany(a => a.Events).Select(e => e.Condition).Distinct().Order()];
        ExposureTenths = aircraft.Sum(a => a.ExposureTenths);
    }

    /// <summary>Path.</summary>
    public string Location { get; }

    /// <summary>Its kind.</summary>
    public LocationKind Kind { get; }

    /// <summary>Aircraft, by registration.</summary>
    public IReadOnlyList<AircraftAtLocation> Aircraft { get; }

    /// <summary>Conditions seen here.</summary>
    public IReadOnlyList<Condition> Conditions { get; }

    /// <summary>Hours watched by all aircraft, in tenths: whole numbers add up to the same in any order.</summary>
    public long ExposureTenths { get; }

    /// <summary>Whether the condition makes sense here.</summary>
    public bool CanHave(Condition condition) => Kind.Conditions.Contains(condition);
}
