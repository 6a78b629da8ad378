using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Recurrences;
using FleetTrend.Trends.Expectations;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Growth;

/// <summary>
/// The watched hours of the aircraft at one kind of place, cut where findings came between two looks: by the calendar, in years before the as-of day,
/// and by time
/// in service. What was watched without a finding stands in whole stretches by hours, and in periods of four weeks by the calendar.
/// </summary>
internal sealed class GrowthSpans
{
    /// <summary>Years of the calendar that count.</summary>
    public const int Years = 3;

    private const double DaysInYear = 365.25;
    private const int PeriodDays = 28;
    private const int Periods = 39; // a little less than three years
    private const long LeastTenths = 1;

    private readonly DateOnly asOf;
    private readonly List<(string Registration, HoursByDay Hours, long[] Boundaries, List<AircraftAtLocation> Places)> aircraft;

    /// <summary>Puts the places of one kind together.</summary>
    /// <param name="locations">The locations of the kind.</param>
    /// <param name="hours">Hours of every aircraft.</param>
    /// <param name="asOf">The as-of day.</param>
    public GrowthSpans(IEnumerable<LocationObservations> locations, IReadOnlyDictionary<string, HoursByDay> hours, DateOnly asOf)
    {
        this.asOf = asOf;
        aircraft =
        [
            .. locations.SelectMany(l => l.Aircraft).Where(a => a.Windows.Count > 0 && hours[a.Registration].Days.Count > 0)
                .GroupBy(a => a.Registration, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => (g.Key, hours[g.Key], Boundaries(hours[g.Key]), g.ToList())),
        ];
    }

    /// <summary>By time in service, hours.</summary>
    public IEnumerable<(string Registration, IReadOnlyList<GrowthSpan> Spans)> ByHours(Condition condition)
    {
        foreach (var (registration, _, _, places) in aircraft)
        {
            var spans = new Dictionary<(long Start, long Stop), (long Tenths, int Events)>();
            foreach (var place in places)
            {
                foreach (var (from, to) in place.Windows)
                {
                    var at = from.Tenths;
                    foreach (var (start, found, events) in Found(place, condition, from, to))
                    {
                        Add(spans, at, start, 0);
                        Add(spans, start, found, events);
                        at = found;
                    }

                    Add(spans, at, to.Tenths, 0);
                }
            }

            yield return (registration, [.. spans.OrderBy(s => s.Key)
                .Select(s => new GrowthSpan(s.Key.Start / 10.0, s.Key.Stop / 10.0, s.Value.Tenths / 10.0, s.Value.Events))]);
        }
    }

    /// <summary>By the calendar, years before the as-of day, the last three.</summary>
    public IEnumerable<(string Registration, IReadOnlyList<GrowthSpan> Spans)> ByCalendar(Condition condition)
    {
        foreach (var (registration, hours, boundaries, places) in aircraft)
        {
            var quiet = new long[Periods];
            var spans = new Dictionary<(long Start, long Stop), (long Tenths, int Events)>();
            foreach (var place in places)
            {
                foreach (var (from, to) in place.Windows)
                {
                    Watch(quiet, boundaries, from.Tenths, to.Tenths, +1);
                    foreach (var (start, found, events) in Found(place, condition, from, to))
                    {
                        var begin = Math.Max(start, boundaries[0]);
                        if (found <= begin || start + found < 2 * boundaries[0])
                            continue; // before the years that count, or most of it
                        Watch(quiet, boundaries, begin, found, -1);
                        var (first, last) = (DayOf(hours, begin), DayOf(hours, found));
                        var key = ((long)Math.Min(first, last - 1), (long)last);
                        var known = spans.GetValueOrDefault(key);
                        spans[key] = (known.Tenths + found - begin, known.Events + events);
                    }
                }
            }

            List<GrowthSpan> rows = [.. spans.OrderBy(s => s.Key)
                .Select(s => new GrowthSpan(Before(s.Key.Start), Before(s.Key.Stop), s.Value.Tenths / 10.0, s.Value.Events))];
            for (var p = 0; p < Periods; p++)
            {
                if (quiet[p] > 0)
                    rows.Add(new GrowthSpan(Before(FirstDay(p)), Before(FirstDay(p + 1)), quiet[p] / 10.0, 0));
            }

            yield return (registration, rows);
        }
    }

    private double Before(long day) => Math.Round((day - asOf.DayNumber) / DaysInYear, 4);

    private int FirstDay(int period) => asOf.DayNumber - ((Periods - period) * PeriodDays);

    /// <summary>Time in service at the ends of the periods, in tenths.</summary>
    private long[] Boundaries(HoursByDay hours) =>
        [.. Enumerable.Range(0, Periods + 1).Select(p => (hours.On(DateOnly.FromDayNumber(Math.Max(0, FirstDay(p)))) ?? Hours.Zero).Tenths)];

    private static int DayOf(HoursByDay hours, long tenths) => HoursCalendar.DayOf(hours, Hours.FromTenths(tenths)).DayNumber;

    private static void Watch(long[] periods, long[] boundaries, long from, long to, int sign)
    {
        for (var p = 0; p < periods.Length && boundaries[p] < to; p++)
            periods[p] += sign * Math.Max(0, Math.Min(to, boundaries[p + 1]) - Math.Max(from, boundaries[p]));
    }

    /// <summary>The findings of a window: after which hours, until which they came, and how many, one span after the other.</summary>
    private static IEnumerable<(long Start, long Found, int Events)> Found(AircraftAtLocation place, Condition condition, Hours from, Hours to)
    {
        var before = from.Tenths;
        foreach (var look in place.Counted(condition).Where(e => from < e.Found && e.Found <= to).GroupBy(e => e.Found.Tenths).OrderBy(g => g.Key))
        {
            var good = look.Min(e => e.LastGood?.Tenths ?? from.Tenths);
            var start = Math.Min(Math.Max(before, good), look.Key - LeastTenths);
            yield return (start, look.Key, look.Count());
            before = look.Key;
        }
    }

    private static void Add(Dictionary<(long Start, long Stop), (long Tenths, int Events)> spans, long start, long stop, int events)
    {
        if (stop <= start)
            return;
        var known = spans.GetValueOrDefault((start, stop));
        spans[(start, stop)] = (known.Tenths + stop - start, known.Events + events);
    }
}
