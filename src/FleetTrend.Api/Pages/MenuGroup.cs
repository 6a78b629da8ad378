namespace FleetTrend.Api.Pages;

/// <summary>Pages that belong together.</summary>
/// <param name="Title">What they are about.</param>
/// <param name="Pages">The pages, the first of which the head leads to.</param>
internal sealed record MenuGroup(string Title, IReadOnlyList<MenuPage> Pages);
