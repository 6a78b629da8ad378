namespace FleetTrend.Trends.LookLists;

/// <summary>The part in service at a location of a look list.</summary>
/// <param name="SerialNumber">Its serial number; null where none is known.</param>
/// <param name="AgeHours">Its age by the latest hours, in hours on the part; null where it is not known.</param>
/// <param name="Chance">The chance that it has failed by the next look, given that it was last seen good; null where too few of its kind have failed,
/// or its age is not known.</param>
/// <param name="Lower">Lower limit of the chance.</param>
/// <param name="Upper">Upper limit of the chance.</param>
public sealed record PartOnList(string? SerialNumber, double? AgeHours, double? Chance, double? Lower, double? Upper);
