using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Groups;

/// <summary>One aircraft at one location: when it was watched there and what it had there.</summary>
internal sealed class AircraftAtLocation
{
    /// <summary>Makes it from segments and events in any order.</summary>
    public AircraftAtLocation(string registration, IEnumerable<LocationExposure> exposures, IEnumerable<LocationEvent> events)
        : this(registration, Joined(exposures), events)
    {
    }

    private AircraftAtLocation(string registration, IReadOnlyList<(Hours From, Hours To)> windows, IEnumerable<LocationEvent> events)
    {
        Registration = registration;
        Windows = windows;
        Events = [.. events
            .OrderBy(e => e.Found)
            .ThenBy(e => e.FoundDate)
            .ThenBy(e => e.Condition)
            .ThenBy(e => e.Ordinal)
            .ThenBy(e => string.Join('|', e.Evidence), StringComparer.Ordinal)];
        ExposureTenths = Windows.Sum(w => (w.To - w.From).Tenths);
    }

    /// <summary>The aircraft.</summary>
    public string Registration { get; }

    /// <summary>Watched spans (From, To], ascending and apart from each other.</summary>
    public IReadOnlyList<(Hours From, Hours To)> Windows { get; }

    /// <summary>Events, by hours found; those present at entry among them.</summary>
    public IReadOnlyList<LocationEvent> Events { get; }

    /// <summary>Hours watched, in tenths.</summary>
    public long ExposureTenths { get; }

    /// <summary>Hours watched.</summary>
    public double ExposureHours => ExposureTenths / 10.0;

    /// <summary>Events of a condition that count in a rate.</summary>
    public int Count(Condition condition) => Counted(condition).Count();

    /// <summary>Those events: found in watched hours, and not by the first look with no start behind it.</summary>
    public IEnumerable<LocationEvent> Counted(Condition condition) => Events.Where(e => e.Condition == condition && IsCounted(e));

    /// <summary>Whether an event counts in a rate, so that what is counted and the hours it is counted in belong together.</summary>
    public bool IsCounted(LocationEvent e) => !e.PresentAtEntry && Windows.Any(w => w.From < e.Found && e.Found <= w.To);

    /// <summary>Segments that touch or overlap become one span, so that no hour counts twice.</summary>
    private static List<(Hours From, Hours To)> Joined(IEnumerable<LocationExposure> exposures)
    {
        var windows = new List<(Hours From, Hours To)>();
        foreach (var e in exposures.Where(e => e.Duration.Tenths > 0).OrderBy(e => e.From).ThenBy(e => e.To))
        {
            if (windows.Count > 0 && e.From <= windows[^1].To)
                windows[^1] = (windows[^1].From, e.To > windows[^1].To ? e.To : windows[^1].To);
            else
                windows.Add((e.From, e.To));
        }
        return windows;
    }
}
