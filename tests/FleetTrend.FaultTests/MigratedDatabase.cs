using FleetTrend.IntegrationTests;
using FleetTrend.Store;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.FaultTests;

/// <summary>Databases with the product's tables, copies of one that was migrated once.</summary>
internal static class MigratedDatabase
{
    public static Task<TestDatabase> CreateAsync(PostgresFixture server) => server.CreateDatabaseAsync("fleettrend schema", async connectionString =>
    {
        await using var services = new ServiceCollection().AddFleetTrendStore(connectionString).BuildServiceProvider();
        await StoreSchema.MigrateAsync(services, CancellationToken.None);
    });
}
