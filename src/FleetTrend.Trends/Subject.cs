namespace FleetTrend.Trends;

/// <summary>What an answer is about, inside a type group; what does not apply is null.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="Location">Path of the location.</param>
/// <param name="Kind">Name of the kind of location or part.</param>
/// <param name="Base">The base.</param>
public sealed record Subject(string? Registration = null, string? Location = null, string? Kind = null, string? Base = null);
