using FleetTrend.IntegrationTests;

namespace FleetTrend.FaultTests;

/// <summary>Test classes marked <c>[Collection(SecondPostgres.Name)]</c> have a server of their own, and run beside those of
/// <see cref="SharedPostgres"/>: most of their time goes into starting one host after the other.</summary>
[CollectionDefinition(Name)]
public sealed class SecondPostgres : ICollectionFixture<PostgresFixture>
{
    public const string Name = "Second PostgreSQL";
}
