using System.Globalization;

namespace FleetTrend.Records.Schedules;

/// <summary>A weekday and a time of day by the clock of a place, written <c>Monday 06:00</c>.</summary>
public sealed record WeeklySlot(DayOfWeek Day, TimeOnly Time)
{
    private const int DaysOfWeek = 7;

    /// <summary>Reads an English weekday and a 24-hour time.</summary>
    /// <returns>False when the text is no such slot.</returns>
    public static bool TryParse(string text, out WeeklySlot slot)
    {
        slot = new WeeklySlot(DayOfWeek.Monday, default);
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 2
            || !Enum.GetNames<DayOfWeek>().Contains(parts[0], StringComparer.OrdinalIgnoreCase)
            || !Enum.TryParse<DayOfWeek>(parts[0], ignoreCase: true, out var day)
            || !TryParseTime(parts[1], out var time))
        {
            return false;
        }
        slot = new WeeklySlot(day, time);
        return true;
    }

    /// <summary>Reads a 24-hour time, such as <c>06:00</c>.</summary>
    public static bool TryParseTime(string text, out TimeOnly time) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out time);

    /// <summary>The latest due moment that is not after <paramref name="now"/>.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="zone">The time zone of the place.</param>
    public DueMoment LatestAt(DateTimeOffset now, TimeZoneInfo zone)
    {
        var due = On(DayAfter(now, zone), zone);
        while (due.Time > now)
            due = On(due.Date.AddDays(-DaysOfWeek), zone);
        return due;
    }

    /// <summary>The first due moment after <paramref name="now"/>.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="zone">The time zone of the place.</param>
    public DueMoment NextAfter(DateTimeOffset now, TimeZoneInfo zone) => On(LatestAt(now, zone).Date.AddDays(DaysOfWeek), zone);

    /// <summary>As <see cref="TryParse"/> reads it.</summary>
    public override string ToString() => $"{Day} {Time.ToString("HH:mm", CultureInfo.InvariantCulture)}";

    /// <summary>
    /// The moment of the slot on a day. A time that the clock skips is the moment at which it goes on; of one that it shows twice, the first counts:
    /// every day has exactly one.
    /// </summary>
    private DueMoment On(DateOnly date, TimeZoneInfo zone)
    {
        var local = date.ToDateTime(Time, DateTimeKind.Unspecified);
        while (zone.IsInvalidTime(local))
            local = local.AddMinutes(1);
        var offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DueMoment(date, new DateTimeOffset(local, offset).ToUniversalTime());
    }

    /// <summary>The weekday of the slot within the six days after tomorrow there, or tomorrow: its moment may be before or after now.</summary>
    private DateOnly DayAfter(DateTimeOffset now, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var tomorrow = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime).AddDays(1);
        return tomorrow.AddDays(((int)Day - (int)tomorrow.DayOfWeek + DaysOfWeek) % DaysOfWeek);
    }
}
