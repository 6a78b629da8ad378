using FleetTrend.Observations.Timelines;
using FleetTrend.Records;

namespace FleetTrend.Observations.Exposures;

/// <summary>Watched hours of a location (rules 1 and 12): from its start to its last look, cut where the aircraft changed base or type group.</summary>
/// <remarks>
/// It starts at the last change of parts recorded between the watch start and the first look, else at the first look itself.
/// An aircraft that changes on a day takes the hours up to that day's own to the earlier base and type group.
/// </remarks>
internal static class LocationExposures
{
    public static IReadOnlyList<LocationExposure> Build(LocationTimeline timeline, AircraftDescription aircraft, AircraftHours hours)
    {
        var watched = timeline.Days.Where(d => d.Date >= aircraft.WatchStartDate).ToList();
        var looks = watched.Where(d => d.Look is not null).ToList();
        if (looks.Count == 0)
            return [];
        var start = watched.LastOrDefault(d => d.Renewal is not null && d.Date < looks[0].Date) ?? looks[0];
        var end = looks[^1];
        var startKeys = start == looks[0] ? start.Look!.Keys : start.Renewal!.Keys;

        var segments = new List<LocationExposure>();
        var from = start.Hours;
        foreach (var (assignment, until) in Assignments(aircraft, start.Date, end.Date))
        {
            var to = until is { } change ? Clamp(hours.ByDay.On(change) ?? from, from, end.Hours) : end.Hours;
            if (to > from && aircraft.Has(assignment.TypeGroup, timeline.Location))
            {
                segments.Add(new LocationExposure
                {
                    Registration = aircraft.Registration,
                    Location = timeline.Location,
                    Kind = timeline.Kind,
                    TypeGroup = assignment.TypeGroup,
                    Base = assignment.Base,
                    From = from,
                    To = to,
                    LookHours = [.. looks.Where(l => (l.Hours > from || (l.Hours == from && from == start.Hours)) && l.Hours <= to).Select(l => l.Hours)],
                    Evidence = [.. startKeys.Concat(end.Look!.Keys).Distinct()],
                });
            }

            from = to;
        }

        return segments;
    }

    /// <summary>Base and type group over the days of an exposure, each with the day it ended; null for the last.</summary>
    private static IEnumerable<((string Base, string TypeGroup) Assignment, DateOnly? Until)> Assignments(
        AircraftDescription aircraft, DateOnly start, DateOnly end)
    {
        var now = aircraft.On(start);
        foreach (var next in aircraft.Assignments.Where(a => a.FromDate > start && a.FromDate <= end))
        {
            if (next.Base == now.Base && next.TypeGroup == now.TypeGroup)
                continue;
            yield return ((now.Base, now.TypeGroup), next.FromDate);
            now = next;
        }

        yield return ((now.Base, now.TypeGroup), null);
    }

    private static Hours Clamp(Hours value, Hours low, Hours high) => value < low ? low : value > high ? high : value;
}
