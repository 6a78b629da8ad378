using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Expectations;

/// <summary>Looks at locations where a condition comes at a rate.</summary>
/// <remarks>
/// Each closes the hours since the look before, on its own day: spread evenly, hours of looks that found nothing came weeks away from the findings
/// beside them, and ordinary fleets had a third more flags than stated.
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
                .OrderBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.From) // sums must not depend on the order in which they came
                .SelectMany(e => Find(a, e, events[e.Location]));
        });

    private static IEnumerable<WatchedLook> Find(AircraftObservations aircraft, LocationExposure exposure, IEnumerable<LocationEvent> events)
    {
        var found = events.Where(e => exposure.From < e.Found && e.Found <= exposure.To).GroupBy(e => e.Found)
            .ToDictionary(g => g.Key, g => (Count: g.Count(), Date: g.Min(e => e.FoundDate)));
        var last = exposure.From;
        var since = HoursCalendar.DayOf(aircraft.Hours, last);
        // The end is no look where the aircraft changed base or type group there: the hours up to it are the segment's all the same.
        foreach (var at in exposure.LookHours.Append(exposure.To).Concat(found.Keys).Where(h => h > exposure.From).Distinct().Order())
        {
            var (count, date) = found.TryGetValue(at, out var there) ? there : (0, HoursCalendar.DayOf(aircraft.Hours, at));
            if (at > last || count > 0)
                yield return new WatchedLook(aircraft.Registration, exposure.Base, exposure.Location, date, (at - last).Value, count, since, null);
            (last, since) = (at, date);
        }
    }
}
