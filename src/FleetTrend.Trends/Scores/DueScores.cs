using FleetTrend.Observations;
using FleetTrend.Records;

namespace FleetTrend.Trends.Scores;

/// <summary>Days that were named for looks held against the looks and hours that came.</summary>
internal sealed class DueScores(TypeGroupInputs inputs)
{
    private const int WeekDays = 7;

    private readonly Dictionary<string, AircraftObservations> byMark = inputs.Aircraft.ToDictionary(a => a.Registration, StringComparer.Ordinal);

    /// <summary>The day of the first forecast; null where nothing was kept.</summary>
    public DateOnly? FirstDate => inputs.Forecasts.DueLooks is [var first, ..] ? first.Date : null;

    /// <summary>Those named in a quarter for a day of it; null where none were kept.</summary>
    public DueScore? Of(Quarter quarter)
    {
        var kept = inputs.Forecasts.DueLooks.Where(k => Quarter.Of(k.Date) == quarter).ToList();
        if (kept.Count == 0)
            return null;
        var named = (from k in kept
                     from due in k.Items
                     where due.DueDate >= k.Date && due.DueDate <= quarter.EndDate
                     where byMark.TryGetValue(due.Registration, out var there) && there is { RetiredDate: null, Hours.Days.Count: > 0 }
                     select Follow(byMark[due.Registration], due, k.Date)).ToList();
        List<int> late = [.. named.Select(n => n.DaysLate).OfType<int>().Order()];
        return new DueScore
        {
            Named = named.Count,
            Met = named.Count(n => n.Met == true),
            Late = named.Count(n => n.Met == false),
            Open = named.Count(n => n is { Met: null, IsPast: true }),
            Flown = late.Count,
            WithinWeek = late.Count(d => Math.Abs(d) <= WeekDays),
            MedianDaysLate = late.Count == 0 ? null : (late[(late.Count - 1) / 2] + late[late.Count / 2]) / 2.0,
        };
    }

    private (bool? Met, bool IsPast, int? DaysLate) Follow(AircraftObservations aircraft, KeptDue due, DateOnly keptDate)
    {
        var (then, hours) = (aircraft.Hours.On(keptDate)!.Value, Hours.From(due.DueHours));
        var latest = aircraft.Hours.On(due.DueDate)!.Value is var onDay && onDay > hours ? onDay : hours;
        bool? met = null;
        foreach (var look in aircraft.Exposures.Where(e => e.Location == due.Location).SelectMany(e => e.LookHours).Where(h => h > then))
            met = met == true || look <= latest;
        var isPast = inputs.AsOfDate > due.DueDate && aircraft.Hours.On(inputs.AsOfDate) > hours;
        return (met, isPast, DayOf(aircraft.Hours, hours)?.DayNumber - due.DueDate.DayNumber);
    }

    /// <summary>The day on which an aircraft had flown the hours; null where it has not.</summary>
    private static DateOnly? DayOf(HoursByDay hours, Hours flown)
    {
        var days = hours.Days;
        for (var i = 0; i < days.Count; i++)
        {
            if (days[i].Hours < flown)
                continue;
            if (i == 0 || days[i].Hours == days[i - 1].Hours)
                return days[i].Date;
            var share = (flown - days[i - 1].Hours).Value / (days[i].Hours - days[i - 1].Hours).Value;
            return days[i - 1].Date.AddDays((int)Math.Round(share * (days[i].Date.DayNumber - days[i - 1].Date.DayNumber)));
        }

        return null;
    }
}
