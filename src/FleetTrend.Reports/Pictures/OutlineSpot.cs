namespace FleetTrend.Reports.Pictures;

/// <summary>A place of an outline.</summary>
/// <param name="Path">Path of the location.</param>
/// <param name="Count">What is counted there.</param>
/// <param name="Page">The page to which it leads.</param>
public sealed record OutlineSpot(string Path, int Count, Uri Page);
