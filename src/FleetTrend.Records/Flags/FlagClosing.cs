namespace FleetTrend.Records.Flags;

/// <summary>
/// What people have settled about the subject of flags: by closing one, as corrected or as a false alarm, or by acting on one. What had come
/// until that day is settled.
/// </summary>
/// <param name="Subject">What the flag was about, as the flag names it.</param>
/// <param name="CloseTime">When people last said so, or reopened the flag (UTC).</param>
/// <param name="CountedAfterDate">The day after which findings count again; null where the flag was reopened and nothing is settled.</param>
public sealed record FlagClosing(string Subject, DateTimeOffset CloseTime, DateOnly? CountedAfterDate)
{
    /// <summary>The day of the newest action about it; null where nobody has acted.</summary>
    public DateOnly? ActionDate { get; init; }

    /// <summary>A closing: what came until the day (UTC) on which it was said is settled.</summary>
    /// <param name="subject">What the flag was about.</param>
    /// <param name="closeTime">When it was closed.</param>
    public FlagClosing(string subject, DateTimeOffset closeTime)
        : this(subject, closeTime, DateOnly.FromDateTime(closeTime.UtcDateTime))
    {
    }
}
