using System.Globalization;

namespace FleetTrend.Hosting.Configuration;

/// <summary>A weekday and a time of day, local to the schedule's time zone, written <c>Monday 06:00</c>.</summary>
public sealed record WeeklySlot(DayOfWeek Day, TimeOnly Time)
{
    /// <summary>Reads an English weekday and a 24-hour time.</summary>
    /// <returns>False when the text is no such slot.</returns>
    public static bool TryParse(string text, out WeeklySlot slot)
    {
        slot = new WeeklySlot(DayOfWeek.Monday, default);
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 2
            || !Enum.GetNames<DayOfWeek>().Contains(parts[0], StringComparer.OrdinalIgnoreCase)
            || !Enum.TryParse<DayOfWeek>(parts[0], ignoreCase: true, out var day)
            || !TimeOnly.TryParseExact(parts[1], "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return false;
        }
        slot = new WeeklySlot(day, time);
        return true;
    }

    /// <summary>As <see cref="TryParse"/> reads it.</summary>
    public override string ToString() => $"{Day} {Time.ToString("HH:mm", CultureInfo.InvariantCulture)}";
}
