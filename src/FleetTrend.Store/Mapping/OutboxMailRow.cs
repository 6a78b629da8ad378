namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>outbox_mails</c>: a mail that is owed.</summary>
internal sealed class OutboxMailRow
{
    public long Id { get; set; }

    public long ReportId { get; set; }

    public string Recipient { get; set; } = "";

    public string MessageId { get; set; } = "";

    public int AttemptCount { get; set; }

    public DateTimeOffset NextAttemptTime { get; set; }

    /// <summary>Since when it is owed; asked for again by hand, since then.</summary>
    public DateTimeOffset OwedTime { get; set; }

    public DateTimeOffset? SentTime { get; set; }

    /// <summary>When no further attempt was made; null while there are some, and once it is sent.</summary>
    public DateTimeOffset? GivenUpTime { get; set; }

    public string? LastError { get; set; }
}
