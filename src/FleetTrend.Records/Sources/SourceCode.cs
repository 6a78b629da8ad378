namespace FleetTrend.Records.Sources;

/// <summary>A code as a source writes it. Equal texts of two kinds, or of two sources, are different codes.</summary>
/// <param name="Source">Name of the source.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="Code">The code; upper and lower case are apart.</param>
public sealed record SourceCode(string Source, CodeKind Kind, string Code);
