using FleetTrend.Records;

namespace FleetTrend.Trends.Restarts;

/// <summary>Where counting starts again: what was found on the day itself is before it.</summary>
/// <param name="Day">The day on which the flag was closed.</param>
/// <param name="Hours">Time in service on that day.</param>
internal sealed record FlagRestart(DateOnly Day, Hours Hours);
