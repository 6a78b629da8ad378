namespace FleetTrend.Store.Results;

/// <summary>A row of results.</summary>
/// <param name="SetId">Its set.</param>
/// <param name="First">How many answers stand before it among those asked for.</param>
/// <param name="Detail">The answers as JSON text.</param>
public sealed record StoredResult(long SetId, long First, string Detail);
