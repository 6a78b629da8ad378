using FleetTrend.Observations;

namespace FleetTrend.Trends.DueLooks;

/// <summary>
/// How much each aircraft is taken to fly in the weeks to come: its hours of the last 13 weeks before its latest reading or inspection. Where aircraft of
/// the type group have 65 weeks of records, times how much more or less they flew together, a year before, in the time to come than in the last 13 weeks.
/// </summary>
internal sealed class Utilisation
{
    private const int Span = 13 * 7;
    private const int Year = 52 * 7;

    // With less of its records an aircraft's weeks say little.
    private const int LeastDays = 4 * 7;

    // One aircraft alone in the shop for a season is no season.
    private const double MostSeason = 3;

    // With fewer aircraft how much one differs from the next is taken as usual: a fifth.
    private const int LeastAircraft = 5;
    private const double UsualSpread = 0.2;
    private const double LeastSpread = 0.05;
    private const double MostSpread = 0.5;

    private readonly DateOnly today;
    private readonly IReadOnlyList<AircraftObservations> known;

    private Utilisation(DateOnly today, IReadOnlyList<AircraftObservations> known, double spread)
    {
        (this.today, this.known, Spread) = (today, known, spread);
        Season = SeasonOf(Span);
    }

    /// <summary>The next 13 weeks over the last 13, a year before; null where it is not known.</summary>
    public double? Season { get; }

    /// <summary>
    /// By how much what an aircraft flies differs from its pace, as a share: the standard deviation, between aircraft, of the logarithm of the last 13 weeks
    /// over the 13 before them. What moves all aircraft together, as a season, is no part of it.
    /// </summary>
    public double Spread { get; }

    /// <summary>Looks at the aircraft that fly in the type group.</summary>
    public static Utilisation Estimate(TypeGroupInputs inputs)
    {
        List<AircraftObservations> flying = [.. inputs.Present.Where(a => a.RetiredDate is null && a.Hours.Days.Count > 0)];
        return new Utilisation(inputs.AsOfDate, [.. flying.Where(a => a.Hours.Days[0].Date <= inputs.AsOfDate.AddDays(-Year - Span))], SpreadOf(flying));
    }

    /// <summary>Hours a day in so many days to come over those of the last 13 weeks, a year before; null where it is not known.</summary>
    public double? SeasonOf(int days)
    {
        days = Math.Min(days, Year);
        var (before, after) = (0.0, 0.0);
        foreach (var aircraft in known)
        {
            before += Flown(aircraft.Hours, today.AddDays(-Year - Span), today.AddDays(-Year));
            after += Flown(aircraft.Hours, today.AddDays(-Year), today.AddDays(days - Year));
        }

        return before > 0 && after > 0 ? Math.Clamp(after / days / (before / Span), 1 / MostSeason, MostSeason) : null;
    }

    /// <summary>Flight hours a week of an aircraft; null where less than four weeks of it are known, or it has not flown.</summary>
    public double? HoursPerWeek(AircraftObservations aircraft) => 7 * HoursPerDay(aircraft) * (Season ?? 1);

    /// <summary>Flight hours a day of an aircraft in the 13 weeks before its latest hours; null as above.</summary>
    public static double? HoursPerDay(AircraftObservations aircraft)
    {
        if (aircraft.Latest is not { } latest || aircraft.Hours.Days.Count == 0)
            return null;
        var first = aircraft.Hours.Days[0].Date;
        var from = latest.Date.AddDays(-Span) is var start && start > first ? start : first;
        var days = latest.Date.DayNumber - from.DayNumber;
        if (days < LeastDays || Flown(aircraft.Hours, from, latest.Date) is not (> 0 and var flown))
            return null;
        return flown / days;
    }

    private static double SpreadOf(List<AircraftObservations> flying)
    {
        List<double> ratios = [];
        foreach (var aircraft in flying)
        {
            var last = aircraft.Hours.Days[^1].Date;
            if (aircraft.Hours.Days[0].Date > last.AddDays(-2 * Span))
                continue;
            var (before, after) = (Flown(aircraft.Hours, last.AddDays(-2 * Span), last.AddDays(-Span)), Flown(aircraft.Hours, last.AddDays(-Span), last));
            if (before > 0 && after > 0)
                ratios.Add(Math.Log(after / before));
        }

        if (ratios.Count < LeastAircraft)
            return UsualSpread;
        var mean = ratios.Average();
        return Math.Clamp(Math.Sqrt(ratios.Sum(r => (r - mean) * (r - mean)) / (ratios.Count - 1)), LeastSpread, MostSpread);
    }

    private static double Flown(HoursByDay hours, DateOnly from, DateOnly to) => (hours.On(to)!.Value - hours.On(from)!.Value).Value;
}
