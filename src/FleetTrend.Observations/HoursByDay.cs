using FleetTrend.Records;

namespace FleetTrend.Observations;

/// <summary>Time in service of one aircraft over the days.</summary>
/// <param name="days">The days on which it is known, ascending; hours never fall from one to the next.</param>
public sealed class HoursByDay(IReadOnlyList<HoursOnDate> days)
{
    /// <summary>The days on which it is known, ascending.</summary>
    public IReadOnlyList<HoursOnDate> Days { get; } = days;

    /// <summary>The latest known; null where none is.</summary>
    public HoursOnDate? Latest => Days.Count == 0 ? null : Days[^1];

    /// <summary>Time in service on a day by interpolation of what is known; outside of it, the nearest. Null where nothing is known.</summary>
    public Hours? On(DateOnly date)
    {
        if (Days.Count == 0)
            return null;
        var (low, high) = (0, Days.Count); // the first day known that is not before the date
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Days[middle].Date < date ? (middle + 1, high) : (low, middle);
        }
        if (low == Days.Count)
            return Days[^1].Hours;
        if (low == 0 || Days[low].Date == date)
            return Days[low].Hours;
        var (a, b) = (Days[low - 1], Days[low]);
        var share = (date.DayNumber - a.Date.DayNumber) / (double)(b.Date.DayNumber - a.Date.DayNumber);
        return Hours.FromTenths(a.Hours.Tenths + (long)Math.Round((b.Hours - a.Hours).Tenths * share));
    }
}
