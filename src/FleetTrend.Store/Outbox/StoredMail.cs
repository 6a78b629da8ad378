namespace FleetTrend.Store.Outbox;

/// <summary>A mail and what became of it.</summary>
public sealed record StoredMail
{
    /// <summary>Identifier.</summary>
    public required long MailId { get; init; }

    /// <summary>The report it carries.</summary>
    public required long ReportId { get; init; }

    /// <summary>Mail address.</summary>
    public required string Recipient { get; init; }

    /// <summary>How far it is.</summary>
    public required MailState State { get; init; }

    /// <summary>Attempts so far.</summary>
    public required int AttemptCount { get; init; }

    /// <summary>Since when it is owed (UTC); asked for again by hand, since then.</summary>
    public required DateTimeOffset OwedTime { get; init; }

    /// <summary>When it was sent or given up (UTC); null while it is owed.</summary>
    public required DateTimeOffset? EndTime { get; init; }

    /// <summary>What the mail server said last; null where nothing failed since, and once it is sent.</summary>
    public required string? LastError { get; init; }
}
