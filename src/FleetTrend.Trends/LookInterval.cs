namespace FleetTrend.Trends;

/// <summary>How many flight hours apart the parts of some kind on some type group are looked at, where that is not the general interval.</summary>
/// <param name="TypeGroup">The type group; null for all.</param>
/// <param name="Kind">Name of the kind of location; null for all.</param>
/// <param name="Hours">The interval, flight hours.</param>
public sealed record LookInterval(string? TypeGroup, string? Kind, double Hours);
