namespace FleetTrend.Store.Flags;

/// <summary>Whether what was done about a flag helped, by the numbers of a refresh.</summary>
/// <param name="Subject">What the flag is about.</param>
/// <param name="Helped">True where it helped, false where nothing got better. While it is too early to tell there is no verdict.</param>
/// <param name="Note">The figures behind it, for people.</param>
public sealed record FlagVerdict(string Subject, bool Helped, string Note);
