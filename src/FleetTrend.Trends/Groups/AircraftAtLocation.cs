using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Groups;

/// <summary>One aircraft at one location: when it was watched there and what it had there.</summary>
internal sealed class AircraftAtLocation
{
    /// <summary>Makes it from segments and events in any order.</summary>
    public AircraftAtLocation(string registration, IEnumerable<LocationExposure> exposures, IEnumerable<LocationEvent> events)
    {
        Registration = registration;
        Exposures = [.. exposures.OrderBy(e => e.From).ThenBy(e => e.To)];
        Events = [.. events
            .OrderBy(e => e.Found)
            .ThenBy(e => e.FoundDate)
            .ThenBy(e => e.Condition)
            .ThenBy(e => e.Ordinal)
            .ThenBy(e => string.Join('|', e.Evidence), StringComparer.Ordinal)];
        ExposureTenths = Exposures.Sum(e => Math.Max(0, e.Duration.Tenths));
    }

    /// <summary>The aircraft.</summary>
    public string Registration { get; }

    /// <summary>Watched segments, by hours.</summary>
    public IReadOnlyList<LocationExposure> Exposures { get; }

    /// <summary>Events, by hours found; those present at entry among them.</summary>
    public IReadOnlyList<LocationEvent> Events { get; }

    /// <summary>Hours watched, in tenths.</summary>
    public long ExposureTenths { get; }

    /// <summary>Hours watched.</summary>
    public double ExposureHours => ExposureTenths / 10.0;

    /// <summary>Events of a condition that count in a rate: not those that a first look found.</summary>
    public int Count(Condition condition) => Counted(condition).Count();

    /// <summary>The events that <see cref="Count"/> counts.</summary>
    public IEnumerable<LocationEvent> Counted(Condition condition) =>
        ExposureTenths > 0 ? Events.Where(e => e.Condition == condition && !e.PresentAtEntry) : [];
}
