using FleetTrend.Records.Layouts;
using FleetTrend.Store.Layouts;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetTrend.Store;

/// <summary>Brings the database to the form that this version needs.</summary>
public static class StoreSchema
{
    /// <summary>Applies the migrations that are missing and adds the shipped kinds and layouts; several processes may start at once.</summary>
    /// <exception cref="InvalidOperationException">A shipped layout clashes with what is stored under its name or paths.</exception>
    public static Task MigrateAsync(IServiceProvider services, CancellationToken ct) => AloneAsync(services, () => ApplyAsync(services, ct), ct);

    /// <summary>Does something to a schema while no other process of the product does.</summary>
    public static async Task AloneAsync(IServiceProvider services, Func<Task> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(change);
        var dataSource = services.GetRequiredService<NpgsqlDataSource>();
        await using var connection = await dataSource.OpenConnectionAsync(ct);

        // The lock belongs to the transaction of this connection; the change runs on another one.
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var wait = new NpgsqlCommand($"select pg_advisory_xact_lock({AdvisoryLock.Schema})", connection)
        {
            CommandTimeout = 0, // as long as another process is at it
        };
        await wait.ExecuteNonQueryAsync(ct);
        await change();
    }

    private static async Task ApplyAsync(IServiceProvider services, CancellationToken ct)
    {
        await using (var context = await services.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync(ct))
            await context.Database.MigrateAsync(ct);

        var layouts = services.GetRequiredService<LayoutStore>();
        await layouts.ShipKindsAsync(ShippedKinds.All, ct);
        foreach (var layout in ShippedLayouts.All)
        {
            var result = await layouts.AddLayoutAsync(layout, ct);
            if (!result.IsStored)
                throw new InvalidOperationException($"Shipped layout {layout.Name} is refused: {result}");
        }
    }
}
