using FleetTrend.Observations;

namespace FleetTrend.Trends.DueLooks;

/// <summary>
/// How much each aircraft is taken to fly in the weeks to come: its hours of the last 13 weeks before its latest reading or inspection. Where aircraft of
/// the type group have 65 weeks of records, times how much more or less they flew together, a year before, in the 13 weeks to come than in the last 13.
/// </summary>
internal sealed class Utilisation
{
    private const int Span = 13 * 7;
    private const int Year = 52 * 7;

    // With less of its records an aircraft's weeks say little.
    private const int LeastDays = 4 * 7;

    // One aircraft alone in the shop for a season is no season.
    private const double MostSeason = 3;

    private Utilisation(double? season) => Season = season;

    /// <summary>The next 13 weeks over the last 13, a year before; null where it is not known.</summary>
    public double? Season { get; }

    /// <summary>Looks at the aircraft that fly in the type group.</summary>
    public static Utilisation Estimate(TypeGroupInputs inputs)
    {
        var today = inputs.AsOfDate;
        var (before, after) = (0.0, 0.0);
        var known = inputs.Present.Where(a => a.RetiredDate is null && a.Hours.Days is [var first, ..] && first.Date <= today.AddDays(-Year - Span));
        foreach (var aircraft in known)
        {
            before += Flown(aircraft.Hours, today.AddDays(-Year - Span), today.AddDays(-Year));
            after += Flown(aircraft.Hours, today.AddDays(-Year), today.AddDays(Span - Year));
        }

        return new Utilisation(before > 0 && after > 0 ? Math.Clamp(after / before, 1 / MostSeason, MostSeason) : null);
    }

    /// <summary>Flight hours a week of an aircraft; null where less than four weeks of it are known, or it has not flown.</summary>
    public double? HoursPerWeek(AircraftObservations aircraft)
    {
        if (aircraft.Latest is not { } latest || aircraft.Hours.Days.Count == 0)
            return null;
        var first = aircraft.Hours.Days[0].Date;
        var from = latest.Date.AddDays(-Span) is var start && start > first ? start : first;
        var days = latest.Date.DayNumber - from.DayNumber;
        if (days < LeastDays || Flown(aircraft.Hours, from, latest.Date) is not (> 0 and var flown))
            return null;
        return 7 * flown / days * (Season ?? 1);
    }

    private static double Flown(HoursByDay hours, DateOnly from, DateOnly to) => (hours.On(to)!.Value - hours.On(from)!.Value).Value;
}
