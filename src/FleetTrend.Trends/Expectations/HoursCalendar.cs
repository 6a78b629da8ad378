using FleetTrend.Observations;
using FleetTrend.Records;

namespace FleetTrend.Trends.Expectations;

/// <summary>Periods of four weeks, the last of which ends on the as-of day.</summary>
internal sealed class HoursCalendar
{
    public const int PeriodDays = 28;
    private const int MostPeriods = 130;

    private readonly DateOnly asOf;

    /// <summary>Makes it, from the first day of anything on; what is older than ten years falls into the first period.</summary>
    public HoursCalendar(DateOnly firstDay, DateOnly asOf)
    {
        this.asOf = asOf;
        Periods = Math.Clamp((asOf.DayNumber - firstDay.DayNumber) / PeriodDays + 1, 1, MostPeriods);
    }

    /// <summary>Number of periods.</summary>
    public int Periods { get; }

    /// <summary>The period of a day; days outside fall into the nearest.</summary>
    public int PeriodOf(DateOnly day) => Math.Clamp(Periods - 1 - (asOf.DayNumber - day.DayNumber) / PeriodDays, 0, Periods - 1);

    /// <summary>First day of a period.</summary>
    public DateOnly FirstDay(int period) => asOf.AddDays(1 - (Periods - period) * PeriodDays);

    /// <summary>The day on which an aircraft had so many hours, by interpolation of what is known.</summary>
    public static DateOnly DayOf(HoursByDay hours, Hours value)
    {
        var days = hours.Days;
        var (low, high) = (0, days.Count); // the first known with so many hours
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = days[middle].Hours < value ? (middle + 1, high) : (low, middle);
        }

        if (low == days.Count)
            return days[^1].Date;
        if (low == 0 || days[low].Hours == value)
            return days[low].Date;
        var (a, b) = (days[low - 1], days[low]);
        var share = (value - a.Hours).Tenths / (double)(b.Hours - a.Hours).Tenths;
        return a.Date.AddDays((int)Math.Ceiling(share * (b.Date.DayNumber - a.Date.DayNumber) - 1e-6));
    }
}
