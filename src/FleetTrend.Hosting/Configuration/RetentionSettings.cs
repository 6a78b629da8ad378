namespace FleetTrend.Hosting.Configuration;

/// <summary>How long rows stay that nothing needs any more, 1 to 36,500 days each. Records and reports stay for ever.</summary>
public sealed record RetentionSettings
{
    /// <summary>Headline figures of trends, one moment a week.</summary>
    public TimeSpan Snapshots { get; init; } = TimeSpan.FromDays(3650);

    /// <summary>Mails that were sent or given up.</summary>
    public TimeSpan Mails { get; init; } = TimeSpan.FromDays(180);

    /// <summary>Requests for reports that were answered, and held records that were accepted since.</summary>
    public TimeSpan Answered { get; init; } = TimeSpan.FromDays(180);
}
