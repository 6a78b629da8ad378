namespace FleetTrend.IntegrationTests.Trends.LongestWatches;

/// <summary>The location of an aircraft that has been watched longest.</summary>
public sealed record LongestWatch(string Registration, string Location, double Hours);
