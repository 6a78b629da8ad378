using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Restarts;

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

    /// <summary>The same with each aircraft since its restart for a condition.</summary>
    public LocationObservations After(FlagRestarts restarts, Condition condition) => !restarts.Any ? this : new LocationObservations(
        Location, Kind,
        [.. Aircraft.Select(a => restarts.Find(a.Registration, Location, condition) is { } restart ? a.After(restart) : a)]);

    /// <summary>Counts of a condition by aircraft.</summary>
    public NormStratum Stratum(Condition condition) => new(
        Location, [.. Aircraft.Where(a => a.ExposureTenths > 0).Select(a => new UnitCount(a.Registration, a.Count(condition), a.ExposureHours))]);

    /// <summary>The count of one aircraft here, against that of all others elsewhere, taken as one.</summary>
    public NormStratum Stratum(Condition condition, string registration, LocationObservations elsewhere)
    {
        var own = Aircraft.Single(a => a.Registration == registration);
        var others = elsewhere.Aircraft.Where(a => a.Registration != registration).ToList();
        return new NormStratum(Location,
        [
            new UnitCount(registration, own.Count(condition), own.ExposureHours),
            new UnitCount("", others.Sum(a => a.Count(condition)), others.Sum(a => a.ExposureTenths) / 10.0),
        ]);
    }

    /// <summary>Whether the condition makes sense here.</summary>
    public bool CanHave(Condition condition) => Kind.Conditions.Contains(condition);
}
