namespace FleetTrend.Trends.Recurrences;

/// <summary>A span of time in service that was watched: (FromHours, ToHours].</summary>
/// <param name="FromHours">Start, hours; what is found there is not in it.</param>
/// <param name="ToHours">The last look in it, hours: nothing is known beyond.</param>
public sealed record WatchedSpan(double FromHours, double ToHours);
