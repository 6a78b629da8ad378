using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.Synthetic;

namespace FleetTrend.PostgresBenchmarks.Fleets;

/// <summary>A copy of a filled database, in which nothing has been computed.</summary>
/// <param name="Database">The copy.</param>
/// <param name="Operator">Whose records it holds.</param>
internal sealed record FilledFleet(BenchmarkDatabase Database, SyntheticOperator Operator) : IAsyncDisposable
{
    public ValueTask DisposeAsync() => Database.DisposeAsync();
}
