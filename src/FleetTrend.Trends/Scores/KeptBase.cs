namespace FleetTrend.Trends.Scores;

/// <summary>What a base was told of the spares it would need.</summary>
/// <param name="Base">The base.</param>
/// <param name="Aircraft">Marks of the aircraft of the type group that were there.</param>
/// <param name="Spares">The forecasts.</param>
public sealed record KeptBase(string Base, IReadOnlyList<string> Aircraft, IReadOnlyList<KeptSpare> Spares);
