using FleetTrend.Records.Schedules;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of schedules of reports.</summary>
public static class ScheduleRules
{
    private const int MaxNameLength = 80;
    private const int MaxScopeLength = 60;
    private const int MaxZoneLength = 60;
    private const int DaysOfWeek = 7;

    /// <summary>Every rule that a schedule breaks, but for whether its base and type group are registered.</summary>
    /// <param name="schedule">As sent; null where it was absent.</param>
    /// <param name="zone">Its time zone; UTC where that is refused.</param>
    /// <param name="slot">Its weekday and time; they count only where nothing is refused.</param>
    public static IReadOnlyList<Refusal> Check(Wire.ReportSchedule? schedule, out TimeZoneInfo zone, out WeeklySlot slot)
    {
        (zone, slot) = (TimeZoneInfo.Utc, new WeeklySlot(DayOfWeek.Monday, default));
        var top = new FieldReader(default);
        if (schedule is null)
        {
            top.Refuse("schedule", "", Reasons.FieldRequired, "must be a schedule");
            return top.Refusals;
        }

        var reader = top.At("schedule");
        reader.Line("name", schedule.Name, 1, MaxNameLength);
        if (schedule.Base.Length > 0 == schedule.TypeGroup.Length > 0)
        {
            var both = schedule.Base.Length > 0;
            reader.Refuse(
                "base", schedule.Base, both ? Reasons.FieldNotAllowed : Reasons.FieldRequired,
                both ? "must be empty where type_group is told" : "must be the base of an aircraft, or * for the whole fleet, where no type_group is told");
        }

        if (schedule.Base.Length > 0)
            reader.Line("base", schedule.Base, 1, MaxScopeLength);
        if (schedule.TypeGroup.Length > 0)
            reader.Line("type_group", schedule.TypeGroup, 1, MaxScopeLength);

        // The contract numbers Sunday 7, .NET 0; the rest are alike.
        var day = reader.Choice<Wire.Weekday, IsoDay>("weekday", schedule.Weekday);
        if (!WeeklySlot.TryParseTime(schedule.Time, out var time))
        {
            reader.Refuse(
                "time", schedule.Time, schedule.Time.Length == 0 ? Reasons.FieldRequired : Reasons.PatternMismatch, "must be a 24-hour time, such as 06:00");
        }

        slot = new WeeklySlot((DayOfWeek)((int)day % DaysOfWeek), time);
        if (schedule.TimeZone.Length is 0 or > MaxZoneLength || !TimeZoneInfo.TryFindSystemTimeZoneById(schedule.TimeZone, out var found) || !found.HasIanaId)
        {
            reader.Refuse(
                "time_zone", schedule.TimeZone, schedule.TimeZone.Length == 0 ? Reasons.FieldRequired : Reasons.PatternMismatch,
                "must be an IANA time zone that the server knows, such as America/Chicago");
        }
        else
        {
            zone = found;
        }

        ReportRules.Addresses(reader, "recipients", schedule.Recipients);
        return top.Refusals;
    }

    /// <summary>Every rule that the name of a schedule breaks.</summary>
    public static IReadOnlyList<Refusal> CheckName(string name)
    {
        var reader = new FieldReader(default);
        reader.Line("name", name, 1, MaxNameLength);
        return reader.Refusals;
    }

    /// <summary>Days as the contract counts them.</summary>
    private enum IsoDay
    {
        Monday = 1,
        Tuesday,
        Wednesday,
        Thursday,
        Friday,
        Saturday,
        Sunday,
    }
}
