namespace FleetTrend.Reports.Weekly;

/// <summary>The days a report covers, both ends included.</summary>
public sealed record ReportPeriod
{
    /// <summary>Makes a period.</summary>
    /// <param name="start">First day, included.</param>
    /// <param name="end">Last day, included.</param>
    /// <exception cref="ArgumentOutOfRangeException">The end is before the start.</exception>
    public ReportPeriod(DateOnly start, DateOnly end)
    {
        if (end < start)
            throw new ArgumentOutOfRangeException(nameof(end), end, $"A period's end is not before its start, {start}.");
        Start = start;
        End = end;
    }

    /// <summary>The seven days that end on the day of a moment.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="timeZone">Where it is that day.</param>
    public static ReportPeriod EndingOn(DateTimeOffset moment, TimeZoneInfo timeZone)
    {
        ArgumentNullException.ThrowIfNull(timeZone);
        var last = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, timeZone).DateTime);
        return new ReportPeriod(last.AddDays(-6), last);
    }

    /// <summary>The seven days before the day on which a report is due.</summary>
    public static ReportPeriod WeekBefore(DateOnly date) => new(date.AddDays(-7), date.AddDays(-1));

    /// <summary>First day, included.</summary>
    public DateOnly Start { get; }

    /// <summary>Last day, included.</summary>
    public DateOnly End { get; }

    /// <summary>Whether a day is inside.</summary>
    public bool Contains(DateOnly date) => date >= Start && date <= End;

    /// <summary>The period that ends the day before this one starts, as long as this one.</summary>
    public ReportPeriod Before() => new(Start.AddDays(-(End.DayNumber - Start.DayNumber + 1)), Start.AddDays(-1));
}
