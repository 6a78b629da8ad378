using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Looks;

/// <summary>
/// Which locations of its present layout an aircraft was looked at, since its records are complete and since it is in its present type group.
/// </summary>
internal static class AircraftLooks
{
    /// <summary>Every location of the present layout, by path.</summary>
    public static IReadOnlyList<LocationLooks> Build(IReadOnlyList<LocationTimeline> timelines, AircraftRecords records)
    {
        var (aircraft, asOf) = (records.Description, records.AsOf);
        var start = StartDate(aircraft, asOf);
        var passedOver = FindPassedOver(records, start);
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
                    PassedOver = passedOver.TryGetValue(l.Path, out var lines) ? Since(looks.Count == 0 ? null : looks[^1].Date, lines) : null,
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

    /// <summary>By location, the lines that say that it was not examined, by date.</summary>
    private static Dictionary<string, List<(Recorded<Inspection> Inspection, LookState State)>> FindPassedOver(AircraftRecords records, DateOnly start)
    {
        // Alike cards share one list of lines, and most examine everything: each list is looked through once.
        var unexamined = new Dictionary<IReadOnlyList<LocationLook>, LocationLook[]>(ReferenceEqualityComparer.Instance);
        var found = new Dictionary<string, List<(Recorded<Inspection> Inspection, LookState State)>>(StringComparer.Ordinal);
        foreach (var inspection in records.Inspections.Where(i => i.Content.InspectionDate >= start))
        {
            if (!unexamined.TryGetValue(inspection.Content.Looks, out var lines))
                unexamined.Add(inspection.Content.Looks, lines = [.. inspection.Content.Looks.Where(l => l.State != LookState.Examined)]);
            foreach (var line in lines)
            {
                if (!found.TryGetValue(line.Location, out var at))
                    found.Add(line.Location, at = []);
                at.Add((inspection, line.State));
            }
        }

        return found;
    }

    private static PassedOver? Since(DateOnly? last, List<(Recorded<Inspection> Inspection, LookState State)> lines)
    {
        var days = lines.Where(l => last is null || l.Inspection.Content.InspectionDate > last).GroupBy(l => l.Inspection.Content.InspectionDate).ToList();
        return days.Count == 0
            ? null
            : new PassedOver(
                days[^1].Key, days[^1].All(l => l.State != LookState.CouldNotExamine), days.Count, [.. days[^1].Select(l => l.Inspection.Key).Distinct()]);
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
