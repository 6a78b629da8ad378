namespace FleetTrend.Reports.Blocks;

/// <summary>One section of a report or a page.</summary>
/// <param name="Name">Short name without blanks, for anchors.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What it says; never empty.</param>
public sealed record ReportSection(string Name, string Heading, IReadOnlyList<Block> Blocks);
