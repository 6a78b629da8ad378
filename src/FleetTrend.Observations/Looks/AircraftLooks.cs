using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Inspections;

namespace FleetTrend.Observations.Looks;

/// <summary>
/// Which locations of its present layout an aircraft was looked at, since its records are complete and since it is in its present type group.
/// </summary>
internal static class AircraftLooks
{
    /// <summary>Every location of the present layout, by path.</summary>
    public static IReadOnlyList<LocationLooks> Build(IReadOnlyList<LocationTimeline> timelines, AircraftDescription aircraft, DateOnly asOf)
    {
        var start = StartDate(aircraft, asOf);
        var days = timelines.ToDictionary(t => t.Location, t => t.Days, StringComparer.Ordinal);
        return
        [
            .. aircraft.Layout(asOf).OrderBy(l => l.Path, StringComparer.Ordinal).Select(l =>
            {
                var looks = days.GetValueOrDefault(l.Path, []).Where(d => d.Look is not null && d.Date >= start).ToList();
                return new LocationLooks
                {
                    Location = l.Path,
                    Kind = l.Kind,
                    LookCount = looks.Count,
                    LastDate = looks.Count == 0 ? null : looks[^1].Date,
                    Evidence = looks.Count == 0 ? [] : looks[^1].Look!.Keys,
                };
            }),
        ];
    }

    /// <summary>Days on which something was examined, ascending.</summary>
    public static IReadOnlyList<Visit> Visits(AircraftRecords records, AircraftHours hours)
    {
        var start = StartDate(records.Description, records.AsOf);
        return
        [
            .. records.Inspections
                .Where(i => i.Content.InspectionDate >= start && i.Content.Looks.Any(l => l.State == LookState.Examined))
                .GroupBy(i => i.Content.InspectionDate)
                .Select(g => new Visit(g.Key, hours.OfVisit(g.Key), [.. g.Select(i => i.Key)])),
        ];
    }

    private static DateOnly StartDate(AircraftDescription aircraft, DateOnly asOf)
    {
        var now = aircraft.On(asOf);
        var other = aircraft.Assignments.LastOrDefault(a => a.FromDate <= now.FromDate && a.TypeGroup != now.TypeGroup);
        if (other is null)
            return aircraft.WatchStartDate;
        var since = aircraft.Assignments.First(a => a.FromDate > other.FromDate).FromDate;
        return since > aircraft.WatchStartDate ? since : aircraft.WatchStartDate;
    }
}
