namespace FleetTrend.Trends.Shrouds;

/// <summary>How many clamp bolts are in a state.</summary>
/// <param name="State">The state.</param>
/// <param name="Bolts">Bolts, a location each.</param>
/// <param name="Aircraft">On how many aircraft.</param>
/// <param name="MeanAgeHours">Mean flight hours in service of those of known age; null where none is known.</param>
public sealed record HexCount(HexState State, int Bolts, int Aircraft, double? MeanAgeHours);
