namespace FleetTrend.Trends.Silence;

/// <summary>A source that has stopped sending against its own habit.</summary>
/// <param name="Source">Its name.</param>
/// <param name="Habit">How often it sent, and how long ago the last was.</param>
public sealed record SilentSource(string Source, Habit Habit);
