using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Expectations;

/// <summary>Looks at locations where a condition comes at a rate.</summary>
/// <remarks>
/// Of looks between the ends of an exposure only the number is kept, and the hours of those that found something: the others are spread evenly.
/// </remarks>
internal static class RateLooks
{
    public static IEnumerable<WatchedLook> Find(TypeGroupInputs inputs, Condition condition, Func<string, bool> isAtRate) => inputs.Aircraft
        .Where(a => a.Hours.Days.Count > 0)
        .SelectMany(a =>
        {
            var events = a.Events.Where(e => e.TypeGroup == inputs.TypeGroup && e.Condition == condition && !e.PresentAtEntry)
                .ToLookup(e => e.Location, StringComparer.Ordinal);
            return a.Exposures
                .Where(e => e.TypeGroup == inputs.TypeGroup && e.Duration.Tenths > 0 && e.Kind.Conditions.Contains(condition) && isAtRate(e.Kind.Name))
                .SelectMany(e => Find(a, e, events[e.Location]));
        });

    private static IEnumerable<WatchedLook> Find(AircraftObservations aircraft, LocationExposure exposure, IEnumerable<LocationEvent> events)
    {
        var found = events.Where(e => exposure.From < e.Found && e.Found <= exposure.To).GroupBy(e => e.Found)
            .ToDictionary(g => g.Key, g => (Count: g.Count(), Date: g.Min(e => e.FoundDate)));
        var looks = Math.Max(1, exposure.LookCount - 1);
        var last = exposure.From;
        var since = HoursCalendar.DayOf(aircraft.Hours, last);
        foreach (var at in Enumerable.Range(1, looks)
            .Select(i => Hours.FromTenths(exposure.From.Tenths + exposure.Duration.Tenths * i / looks)).Concat(found.Keys).Distinct().Order())
        {
            var (count, date) = found.TryGetValue(at, out var there) ? there : (0, HoursCalendar.DayOf(aircraft.Hours, at));
            if (at > last || count > 0)
                yield return new WatchedLook(aircraft.Registration, exposure.Base, exposure.Location, date, (at - last).Value, count, since, null);
            (last, since) = (at, date);
        }
    }
}
