namespace FleetTrend.Trends.Rates;

/// <summary>What one aircraft adds to the rate of a location.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="Events">Its events that count in the rate; one or more.</param>
/// <param name="Hours">Hours that it was watched there.</param>
public sealed record AircraftEvents(string Registration, int Events, double Hours);
