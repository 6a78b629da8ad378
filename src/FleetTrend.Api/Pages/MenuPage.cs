namespace FleetTrend.Api.Pages;

/// <summary>A page in the menu.</summary>
/// <param name="Path">Its address.</param>
/// <param name="Title">Its name.</param>
internal sealed record MenuPage(string Path, string Title);
