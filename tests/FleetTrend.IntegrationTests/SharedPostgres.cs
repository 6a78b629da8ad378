namespace FleetTrend.IntegrationTests;

/// <summary>Test classes marked <c>[Collection(SharedPostgres.Name)]</c> share one server and run one after the
/// other; each makes databases of its own.</summary>
[CollectionDefinition(Name)]
public sealed class SharedPostgres : ICollectionFixture<PostgresFixture>
{
    public const string Name = "PostgreSQL";
}
