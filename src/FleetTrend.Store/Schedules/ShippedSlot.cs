using FleetTrend.Records.Schedules;

namespace FleetTrend.Store.Schedules;

/// <summary>The slot of the settings, which shipped schedules have until somebody changes it.</summary>
/// <param name="Slot">Weekday and time.</param>
/// <param name="TimeZone">The zone.</param>
public sealed record ShippedSlot(WeeklySlot Slot, TimeZoneInfo TimeZone)
{
    /// <summary>The schedule of a scope as it is shipped: nobody gets it until somebody is put in.</summary>
    /// <param name="scope">The whole fleet or a base.</param>
    /// <param name="now">The moment; it is due first after it.</param>
    public ReportSchedule ScheduleOf(ReportScope scope, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(scope);
        return new ReportSchedule
        {
            Name = scope.Base is { } home ? $"Base {home}" : "Whole fleet",
            Scope = scope,
            Slot = Slot,
            TimeZone = TimeZone.Id,
            FollowsSettings = true,
            NextDueTime = Slot.NextAfter(now, TimeZone).Time,
        };
    }
}
