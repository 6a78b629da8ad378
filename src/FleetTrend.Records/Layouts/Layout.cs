namespace FleetTrend.Records.Layouts;

/// <summary>The locations that the aircraft of a type group have.</summary>
/// <param name="Name">Name, such as <c>four-cylinder-muffler-clamp</c>.</param>
/// <param name="Title">For people.</param>
/// <param name="Locations">Its locations, each path once.</param>
public sealed record Layout(string Name, string Title, IReadOnlyList<Location> Locations);
