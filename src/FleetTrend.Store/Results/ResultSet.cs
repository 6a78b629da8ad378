namespace FleetTrend.Store.Results;

/// <summary>A set of results: those of one type group, computed together.</summary>
/// <param name="SetId">Identifier.</param>
/// <param name="TypeGroup">The type group.</param>
/// <param name="SummaryJson">What the fleet as a whole needs of it, as JSON text.</param>
public sealed record ResultSet(long SetId, string TypeGroup, string SummaryJson);
