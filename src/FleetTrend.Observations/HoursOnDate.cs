using FleetTrend.Records;

namespace FleetTrend.Observations;

/// <summary>Time in service on a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="Hours">Time in service.</param>
public sealed record HoursOnDate(DateOnly Date, Hours Hours);
