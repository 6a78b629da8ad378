namespace FleetTrend.Records.Flags;

/// <summary>A person has closed a flag: as corrected or as a false alarm, what had come until then is settled.</summary>
/// <param name="Subject">What the flag was about, as the flag names it.</param>
/// <param name="CloseTime">When it was closed (UTC).</param>
public sealed record FlagClosing(string Subject, DateTimeOffset CloseTime);
