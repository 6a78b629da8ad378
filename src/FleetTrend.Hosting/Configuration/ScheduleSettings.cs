using FleetTrend.Records.Schedules;

namespace FleetTrend.Hosting.Configuration;

/// <summary>When the worker does what.</summary>
public sealed record ScheduleSettings
{
    /// <summary>The zone of the times below, and of the week that a report covers.</summary>
    public TimeZoneInfo TimeZone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>When the weekly report is made and mailed.</summary>
    public WeeklySlot WeeklyReport { get; init; } = new(DayOfWeek.Monday, new TimeOnly(6, 0));

    /// <summary>When all trends are computed anew each day.</summary>
    public TimeOnly NightlyRefresh { get; init; } = new(2, 0);

    /// <summary>How long after a record came in its trends are computed; what comes in meanwhile is taken along.
    /// 0 to 3,600 s.</summary>
    public TimeSpan RefreshDelay { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Least time between two refreshes that nobody asked for, however many records come in. 0 to 3,600 s.</summary>
    public TimeSpan LeastBetweenRefreshes { get; init; } = TimeSpan.FromSeconds(60);
}
