namespace FleetTrend.Store;

/// <summary>One page of a list.</summary>
/// <param name="Items">The items, in the order of the list.</param>
/// <param name="NextPageToken">Opaque; hand it back for the next page. Null on the last page.</param>
/// <typeparam name="T">What is listed.</typeparam>
public sealed record Page<T>(IReadOnlyList<T> Items, string? NextPageToken);
