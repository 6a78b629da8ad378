namespace FleetTrend.Synthetic;

/// <summary>How large an invented operator is.</summary>
/// <param name="Aircraft">Number of aircraft, at least 1.</param>
/// <param name="Years">Years of records, at least 1.</param>
/// <param name="TypeGroups">Number of type groups, at least 1; each has about as many aircraft as the others.</param>
public sealed record OperatorSize(int Aircraft, int Years, int TypeGroups);
