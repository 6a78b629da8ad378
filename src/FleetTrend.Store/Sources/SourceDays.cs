namespace FleetTrend.Store.Sources;

/// <summary>The days on which a source had records accepted.</summary>
/// <param name="Source">Its name.</param>
/// <param name="Days">The days (UTC), ascending.</param>
public sealed record SourceDays(string Source, IReadOnlyList<DateOnly> Days);
