using FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>One page of a list of trends.</summary>
/// <param name="Items">The items.</param>
/// <param name="NextPageToken">Token of the next page; empty on the last.</param>
/// <param name="Origin">Where they come from.</param>
/// <param name="Freshness">How fresh they are.</param>
/// <typeparam name="T">What is listed.</typeparam>
internal sealed record TrendPage<T>(IReadOnlyList<T> Items, string NextPageToken, TrendOrigin Origin, Freshness Freshness);
