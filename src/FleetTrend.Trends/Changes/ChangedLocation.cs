namespace FleetTrend.Trends.Changes;

/// <summary>What a location of the changed part had since it began.</summary>
/// <param name="Location">Path.</param>
/// <param name="Kind">Name of its kind.</param>
/// <param name="Found">Findings.</param>
public sealed record ChangedLocation(string Location, string Kind, int Found);
