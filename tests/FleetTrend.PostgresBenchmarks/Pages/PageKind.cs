namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>Pages that differ only in what they are about.</summary>
/// <param name="Name">First part of the path, a star for each further one, names in the query.</param>
/// <param name="Paths">Some of them, with their queries.</param>
internal sealed record PageKind(string Name, IReadOnlyList<string> Paths);
