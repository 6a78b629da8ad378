namespace FleetTrend.Store.Results;

/// <summary>How far a refresh is.</summary>
/// <param name="Missing">Type groups that are still to be computed.</param>
/// <param name="SetIds">Sets of the others.</param>
public sealed record StartedRefresh(IReadOnlyList<string> Missing, IReadOnlyList<long> SetIds);
