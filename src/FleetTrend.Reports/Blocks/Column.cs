namespace FleetTrend.Reports.Blocks;

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="IsNumeric">True where its cells are numbers, set to the right.</param>
public sealed record Column(string Heading, bool IsNumeric = false);
