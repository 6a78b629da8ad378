namespace FleetTrend.Statistics.Monitoring;

/// <summary>What an alert level is computed from.</summary>
public enum AlertBaseline
{
    /// <summary>The twelve calendar months of all units together before the month that is judged: each month drops the oldest and adds the newest.</summary>
    TwelveMonthsBefore = 0,

    /// <summary>The calendar year before, of all units together: the level stands from January to December.</summary>
    CalendarYearBefore = 1,

    /// <summary>The rates of all units, each over the twelve months that end with the month that is judged.</summary>
    LikeUnits = 2,
}
