namespace FleetTrend.Records.Layouts;

/// <summary>Aircraft that are alike for the systems watched; norms are computed inside it.</summary>
/// <param name="Name">Name, such as <c>trainer-four</c>.</param>
/// <param name="Title">For people.</param>
/// <param name="Layout">Name of its layout.</param>
public sealed record TypeGroup(string Name, string Title, string Layout);
