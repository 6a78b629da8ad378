using FleetTrend.Observations.DataProblems;
using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>Time in service of one aircraft by day, from its meter and from its visits, with what does not add up listed (rule 10).</summary>
/// <remarks>
/// Every day on which something was recorded with hours has one value: its inspection's (the largest of several), else the
/// largest of that day. A day whose hours cannot be true beside the other days (falling, or more than 24 h a day) keeps its
/// visit, but its hours are taken from the days around it; the list of problems says so.
/// </remarks>
internal sealed class AircraftHours
{
    /// <summary>Tolerance between a visit and the readings around it.</summary>
    private static readonly Hours ReadingTolerance = Hours.FromTenths(100);

    /// <summary>Tolerance between records of one day.</summary>
    private static readonly Hours DayTolerance = Hours.FromTenths(1);

    private readonly Dictionary<DateOnly, Hours> visitHours = [];

    private AircraftHours(List<HoursPoint> known) => ByDay = new HoursByDay([.. known.Select(p => new HoursOnDate(p.Date, p.Hours))]);

    /// <summary>What is known of the days, visits and readings together.</summary>
    public HoursByDay ByDay { get; }

    public static AircraftHours Reconcile(AircraftRecords records)
    {
        var (readings, strayReadings) = ConsistentHours.Split(ReadingPoints(records));
        ListStrays(records, "Meter readings", readings, strayReadings, _ => string.Empty);

        var (visits, strayVisits) = ConsistentHours.Split(VisitPoints(records));
        var visitDays = visits.Select(v => v.Date).ToHashSet();
        var together = visits.Concat(readings.Where(r => !visitDays.Contains(r.Date))).OrderBy(p => p.Date).ToList();
        var hours = new AircraftHours(ConsistentHours.Split(together).Kept);

        foreach (var visit in visits)
            hours.visitHours[visit.Date] = visit.Hours;
        foreach (var stray in strayVisits)
            hours.visitHours[stray.Date] = hours.Between(visits, stray.Date);
        ListStrays(records, "Visits", visits, strayVisits, s => $" For {s.Date:O}, {hours.visitHours[s.Date]} h by the days around it is used.");
        ListDisagreements(records, visits, readings);
        MeterChangeChecks.List(records);
        return hours;
    }

    /// <summary>Time in service of everything recorded with hours on that day.</summary>
    public Hours OfVisit(DateOnly date) => visitHours[date];

    private Hours Between(List<HoursPoint> visits, DateOnly date)
    {
        var hours = ByDay.On(date) ?? Hours.Zero;
        var before = visits.FindLast(v => v.Date < date);
        var after = visits.Find(v => v.Date > date);
        if (before is not null && hours < before.Hours)
            return before.Hours;
        return after is not null && hours > after.Hours ? after.Hours : hours;
    }

    private static List<HoursPoint> ReadingPoints(AircraftRecords records)
    {
        var points = new List<HoursPoint>(records.Readings.Count);
        foreach (var reading in records.Readings) // they come by date
        {
            var date = reading.Content.ReadingDate;
            var hours = reading.Content.MeterHours + MeterOffset(records, date);
            if (points.Count > 0 && points[^1] is { } before && before.Date == date)
                points[^1] = before with { Hours = hours > before.Hours ? hours : before.Hours, Keys = [.. before.Keys, reading.Key] };
            else
                points.Add(new HoursPoint(date, hours, IsVisit: false, [reading.Key]));
        }

        return points;
    }

    private static Hours MeterOffset(AircraftRecords records, DateOnly date)
    {
        var offset = records.Description.MeterOffset;
        foreach (var change in records.MeterChanges)
        {
            if (change.Content.ChangeDate <= date)
                offset = offset + change.Content.OldMeterHours - change.Content.NewMeterHours;
        }

        return offset;
    }

    private static List<HoursPoint> VisitPoints(AircraftRecords records)
    {
        var inspections = records.Inspections
            .GroupBy(i => i.Content.InspectionDate)
            .ToDictionary(g => g.Key, g => new HoursPoint(g.Key, g.Max(i => i.Content.TimeInService), IsVisit: true, [.. g.Select(i => i.Key)]));
        var points = inspections.Values.ToList();
        foreach (var day in WithHours(records).GroupBy(r => r.Date))
        {
            var point = inspections.GetValueOrDefault(day.Key);
            if (point is null)
            {
                point = new HoursPoint(day.Key, day.Max(r => r.Hours), IsVisit: true, [.. day.Select(r => r.Key)]);
                points.Add(point);
            }

            var differing = day.Where(r => r.Hours - point.Hours > DayTolerance || point.Hours - r.Hours > DayTolerance).ToList();
            if (differing.Count > 0)
            {
                var told = string.Join(", ", differing.Select(r => r.Hours.ToString()).Distinct(StringComparer.Ordinal));
                records.List(
                    DataProblemKind.HoursDisagreeWithReadings,
                    day.Key,
                    $"Records of {day.Key:O} give {told} h where that day has {point.Hours} h, which is used.",
                    [.. differing.Select(r => r.Key)]);
            }
        }

        return [.. points.OrderBy(p => p.Date)];
    }

    private static IEnumerable<(DateOnly Date, Hours Hours, RecordKey Key)> WithHours(AircraftRecords records) =>
        records.Inspections.Select(r => (r.Content.InspectionDate, r.Content.TimeInService, r.Key))
            .Concat(records.Findings.Select(r => (r.Content.FoundDate, r.Content.TimeInService, r.Key)))
            .Concat(records.Actions.Select(r => (r.Content.ActionDate, r.Content.TimeInService, r.Key)))
            .Concat(records.Installations.Select(r => (r.Content.InstallationDate, r.Content.TimeInService, r.Key)))
            .Concat(records.Removals.Select(r => (r.Content.RemovalDate, r.Content.TimeInService, r.Key)));

    /// <summary>Lists what does not fit; neighbours that go wrong in the same way (a meter change not recorded) are one problem.</summary>
    private static void ListStrays(
        AircraftRecords records, string what, List<HoursPoint> kept, List<HoursPoint> strays, Func<HoursPoint, string> used)
    {
        var runs = strays
            .Select(s => (Stray: s, Before: kept.FindLast(k => k.Date < s.Date), After: kept.Find(k => k.Date > s.Date)))
            .GroupBy(s => (s.Before?.Date, s.After?.Date, Kind: KindOf(s.Before, s.Stray, s.After)));
        foreach (var run in runs)
        {
            var (first, before, after) = run.First();
            var last = run.Last().Stray;
            var when = first == last ? $"of {first.Date:O} ({first.Hours} h)" : $"from {first.Date:O} ({first.Hours} h) to {last.Date:O} ({last.Hours} h)";
            var why = run.Key.Kind == DataProblemKind.TooManyHoursPerDay ? "more than 24 h a day" : "hours going backwards";
            var beside = string.Join(" and ", new[] { before, after }.OfType<HoursPoint>().Select(p => $"{p.Hours} h on {p.Date:O}"));
            records.List(
                run.Key.Kind,
                first.Date,
                $"{what} {when} mean {why} beside {beside}.{string.Concat(run.Select(s => used(s.Stray)))}",
                [.. run.SelectMany(s => s.Stray.Keys)],
                subject: first.Keys); // a run that goes on is the same problem
        }
    }

    private static DataProblemKind KindOf(HoursPoint? before, HoursPoint stray, HoursPoint? after)
    {
        if (before is not null && !ConsistentHours.Follows(before, stray))
            return ConsistentHours.TooFast(before, stray) ? DataProblemKind.TooManyHoursPerDay : DataProblemKind.HoursBackwards;
        return after is not null && ConsistentHours.TooFast(stray, after) ? DataProblemKind.TooManyHoursPerDay : DataProblemKind.HoursBackwards;
    }

    private static void ListDisagreements(AircraftRecords records, List<HoursPoint> visits, List<HoursPoint> readings)
    {
        var next = 0; // the first reading that is not before the visit; both come by date, and a day has one of each
        foreach (var visit in visits)
        {
            while (next < readings.Count && readings[next].Date < visit.Date)
                next++;
            var after = next < readings.Count ? readings[next] : null;
            var before = after?.Date == visit.Date ? after : next > 0 ? readings[next - 1] : null;
            var wrong = before is not null && IsOut(before, visit) ? before
                : after is not null && IsOut(visit, after) ? after
                : null;
            if (wrong is not null)
            {
                records.List(
                    DataProblemKind.HoursDisagreeWithReadings,
                    visit.Date,
                    $"The visit of {visit.Date:O} gives {visit.Hours} h, but the meter gave {wrong.Hours} h on {wrong.Date:O}.",
                    [.. visit.Keys, .. wrong.Keys],
                    subject: visit.Keys);
            }
        }
    }

    /// <summary>True where hours fall, or gain more than 24 h a day, by more than the tolerance.</summary>
    private static bool IsOut(HoursPoint earlier, HoursPoint later) =>
        earlier.Hours - later.Hours > ReadingTolerance
        || later.Hours - earlier.Hours > ReadingTolerance + Hours.FromTenths(240L * (later.Date.DayNumber - earlier.Date.DayNumber));
}
