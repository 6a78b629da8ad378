using FleetTrend.Records.Schedules;

namespace FleetTrend.Store.Schedules;

/// <summary>When a report is made, of what, and who gets it.</summary>
public sealed record ReportSchedule
{
    /// <summary>Identifier; zero before it is stored.</summary>
    public long ScheduleId { get; init; }

    /// <summary>Its name, unlike any other's.</summary>
    public required string Name { get; init; }

    /// <summary>What its reports are about.</summary>
    public required ReportScope Scope { get; init; }

    /// <summary>Weekday and time by the clock of <see cref="TimeZone"/>.</summary>
    public required WeeklySlot Slot { get; init; }

    /// <summary>IANA name of the time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>Whether <see cref="Slot"/> and <see cref="TimeZone"/> are those of the settings, and change with them.</summary>
    public bool FollowsSettings { get; init; }

    /// <summary>While it is paused nothing is due.</summary>
    public bool IsPaused { get; init; }

    /// <summary>Mail addresses, in ordinal order.</summary>
    public IReadOnlyList<string> Recipients { get; init; } = [];

    /// <summary>When the next report is due (UTC); null while it is paused, and until a worker has worked it out.</summary>
    public DateTimeOffset? NextDueTime { get; init; }

    /// <summary>When the last one was due that was made (UTC); null before the first.</summary>
    public DateTimeOffset? LastDueTime { get; init; }

    /// <summary>When that one was made (UTC).</summary>
    public DateTimeOffset? LastMadeTime { get; init; }

    /// <summary>The last report that its recipients were owed; null before the first.</summary>
    public long? LastReportId { get; init; }

    /// <summary>When somebody asked to send it now (UTC); null where nobody has, and once that is done.</summary>
    public DateTimeOffset? SendAskedTime { get; init; }

    /// <summary>Why the latest attempt failed; null where none did since the last success.</summary>
    public string? Failure { get; init; }
}
