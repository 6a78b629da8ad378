using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Expectations;

/// <summary>Looks at locations where a condition comes at a rate.</summary>
/// <remarks>
/// Each closes the hours since the look before, on its own day: spread evenly, hours of looks that found nothing came weeks away from the findings
/// beside them, and ordinary fleets had a third more flags than stated.
/// </remarks>
internal sealed class RateLooks
{
    private readonly List<(AircraftObservations Aircraft, List<Segment> Segments)> watched;
    private readonly string typeGroup;

    /// <summary>Puts the looks of a type group on their days, once for all conditions.</summary>
    public RateLooks(TypeGroupInputs inputs)
    {
        typeGroup = inputs.TypeGroup;
        watched =
        [
            .. inputs.Aircraft.Where(a => a.Hours.Days.Count > 0).Select(a => (a, a.Exposures
                .Where(e => e.TypeGroup == typeGroup && e.Duration.Tenths > 0)
                .OrderBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.From) // sums must not depend on the order in which they came
                .Select(e => new Segment(e, a.Hours)).ToList())),
        ];
    }

    /// <summary>Looks at a condition, by aircraft, location and hours.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="isAtRate">Whether it comes at a rate at a kind of location.</param>
    public IEnumerable<WatchedLook> Find(Condition condition, Func<string, bool> isAtRate)
    {
        foreach (var (aircraft, segments) in watched)
        {
            var events = aircraft.Events.Where(e => e.TypeGroup == typeGroup && e.Condition == condition && !e.PresentAtEntry)
                .ToLookup(e => e.Location, StringComparer.Ordinal);
            foreach (var segment in segments)
            {
                var exposure = segment.Exposure;
                if (!exposure.Kind.Conditions.Contains(condition) || !isAtRate(exposure.Kind.Name))
                    continue;
                foreach (var look in segment.Find(aircraft.Hours, events[exposure.Location]))
                    yield return look;
            }
        }
    }

    /// <summary>Watched hours of a location, cut at its looks.</summary>
    private sealed class Segment
    {
        private readonly (Hours At, DateOnly Date)[] cuts;
        private readonly DateOnly startDate;

        public Segment(LocationExposure exposure, HoursByDay hours)
        {
            Exposure = exposure;
            startDate = HoursCalendar.DayOf(hours, exposure.From);
            // The end is no look where the aircraft changed base or type group there: the hours up to it are the segment's all the same.
            cuts = [.. exposure.LookHours.Append(exposure.To).Where(h => h > exposure.From).Distinct().Order().Select(h => (h, HoursCalendar.DayOf(hours, h)))];
        }

        public LocationExposure Exposure { get; }

        public IEnumerable<WatchedLook> Find(HoursByDay hours, IEnumerable<LocationEvent> events)
        {
            var found = events.Where(e => Exposure.From < e.Found && e.Found <= Exposure.To).GroupBy(e => e.Found)
                .ToDictionary(g => g.Key, g => (Count: g.Count(), Date: g.Min(e => e.FoundDate)));
            var (last, since) = (Exposure.From, startDate);
            foreach (var (at, day) in found.Count == 0 ? cuts : CutsWith(found.Keys, hours))
            {
                var (count, date) = found.TryGetValue(at, out var there) ? there : (0, day);
                if (at > last || count > 0)
                    yield return new WatchedLook(Exposure.Registration, Exposure.Base, Exposure.Location, date, (at - last).Value, count, since, null);
                (last, since) = (at, date);
            }
        }

        /// <summary>The cuts, and one at each finding that no look stands beside.</summary>
        private IEnumerable<(Hours At, DateOnly Date)> CutsWith(IEnumerable<Hours> found, HoursByDay hours)
        {
            List<Hours> alone = [.. found.Where(f => Array.FindIndex(cuts, c => c.At == f) < 0)];
            return alone.Count == 0 ? cuts : cuts.Concat(alone.Select(h => (h, HoursCalendar.DayOf(hours, h)))).OrderBy(c => c.Item1);
        }
    }
}
