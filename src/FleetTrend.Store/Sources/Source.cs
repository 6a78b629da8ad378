namespace FleetTrend.Store.Sources;

/// <summary>A system that pushes records.</summary>
/// <param name="Name">Name: 2 to 40 of a-z, 0-9 and '-'.</param>
/// <param name="Title">For people.</param>
/// <param name="CreateTime">When it was registered (UTC).</param>
public sealed record Source(string Name, string Title, DateTimeOffset CreateTime);
