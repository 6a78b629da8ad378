namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>report_schedules</c>: when a report is made, and of what. One that was removed stays, so that it is not shipped again.</summary>
internal sealed class ReportScheduleRow
{
    public long Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>The base; <c>*</c> for all.</summary>
    public string Base { get; set; } = "";

    public string? TypeGroup { get; set; }

    /// <summary>0 is Sunday.</summary>
    public int DayOfWeek { get; set; }

    public TimeOnly LocalTime { get; set; }

    /// <summary>IANA name.</summary>
    public string TimeZone { get; set; } = "";

    /// <summary>Whether day, time and zone are those of the settings.</summary>
    public bool FollowsSettings { get; set; }

    public bool IsPaused { get; set; }

    /// <summary>Null while it is paused, and where it has yet to be worked out.</summary>
    public DateTimeOffset? NextDueTime { get; set; }

    public DateTimeOffset? LastDueTime { get; set; }

    /// <summary>When what was due then was made; later than that where no worker ran.</summary>
    public DateTimeOffset? LastMadeTime { get; set; }

    public long? LastReportId { get; set; }

    /// <summary>When somebody asked to send it now; null once that is done.</summary>
    public DateTimeOffset? SendAskedTime { get; set; }

    /// <summary>No attempt before this; null where none failed.</summary>
    public DateTimeOffset? RetryTime { get; set; }

    public string? Failure { get; set; }

    public DateTimeOffset? RemoveTime { get; set; }
}
