namespace FleetTrend.Trends.Standings;

/// <summary>What one location adds to an aircraft's standing.</summary>
/// <param name="Location">Path of the location.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Observed">Events there.</param>
/// <param name="Expected">Events expected there at the rate of the others.</param>
/// <param name="ExposureHours">Hours watched there.</param>
/// <param name="ExpectedLower">Lower limit of the expected events, by the method of the standing's; null where stored before there was one.</param>
/// <param name="ExpectedUpper">Upper limit.</param>
public sealed record LocationShare(
    string Location, string Kind, int Observed, double Expected, double ExposureHours, double? ExpectedLower = null, double? ExpectedUpper = null);
