using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.BackTests;

/// <summary>Flight hours of aircraft in a type group between their looks, by base and day.</summary>
internal sealed class WatchedHours
{
    private readonly List<Span> spans = [];

    public WatchedHours(TypeGroupInputs inputs)
    {
        foreach (var aircraft in inputs.Aircraft.Where(a => a.Hours.Days.Count > 0))
        {
            foreach (var atBase in aircraft.Exposures.Where(e => e.TypeGroup == inputs.TypeGroup && e.Duration.Tenths > 0)
                .GroupBy(e => e.Base, StringComparer.Ordinal))
            {
                foreach (var (from, to) in Joined(atBase.Select(e => (e.From, e.To))))
                    spans.Add(new Span(aircraft, atBase.Key, from, to, HoursCalendar.DayOf(aircraft.Hours, from), HoursCalendar.DayOf(aircraft.Hours, to)));
            }
        }

        FirstDate = spans.Count == 0 ? null : spans.Min(s => s.FirstDay);
    }

    /// <summary>The day of the first look; null where there is none.</summary>
    public DateOnly? FirstDate { get; }

    /// <summary>Years between first and last look, all aircraft added up, in some days.</summary>
    public double AircraftYears(DateOnly first, DateOnly last) => spans.GroupBy(s => s.Aircraft.Registration, StringComparer.Ordinal)
        .Sum(g => Math.Max(0, Earlier(g.Max(s => s.LastDay), last).DayNumber - Later(g.Min(s => s.FirstDay), first).DayNumber)) / 365.25;

    /// <summary>Hours by calendar month.</summary>
    /// <param name="months">Number of months from that of <see cref="FirstDate"/> on.</param>
    public IEnumerable<(string Registration, string Base, double[] Hours)> ByMonth(int months)
    {
        var start = new DateOnly(FirstDate!.Value.Year, FirstDate.Value.Month, 1);
        foreach (var span in spans)
        {
            var hours = new double[months];
            var before = span.From;
            for (var m = Math.Max(0, MonthsBetween(start, span.FirstDay)); m < months && before < span.To; m++)
            {
                var until = span.Aircraft.Hours.On(start.AddMonths(m + 1).AddDays(-1)) ?? span.From;
                until = until < before ? before : until > span.To ? span.To : until;
                hours[m] = (until - before).Value;
                before = until;
            }

            yield return (span.Aircraft.Registration, span.Base, hours);
        }
    }

    public static int MonthsBetween(DateOnly first, DateOnly last) => 12 * (last.Year - first.Year) + last.Month - first.Month;

    /// <summary>Spans that touch or overlap are one: several locations are watched in the same hours.</summary>
    private static IEnumerable<(Hours From, Hours To)> Joined(IEnumerable<(Hours From, Hours To)> spans)
    {
        (Hours From, Hours To)? open = null;
        foreach (var next in spans.OrderBy(s => s.From.Tenths).ThenBy(s => s.To.Tenths))
        {
            if (open is { } now && next.From <= now.To)
            {
                open = (now.From, next.To > now.To ? next.To : now.To);
                continue;
            }

            if (open is { } done)
                yield return done;
            open = next;
        }

        if (open is { } last)
            yield return last;
    }

    private static DateOnly Earlier(DateOnly a, DateOnly b) => a < b ? a : b;

    private static DateOnly Later(DateOnly a, DateOnly b) => a > b ? a : b;

    private sealed record Span(AircraftObservations Aircraft, string Base, Hours From, Hours To, DateOnly FirstDay, DateOnly LastDay);
}
