using FleetTrend.Records.Layouts;
using FleetTrend.Store.Layouts;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetTrend.Store;

/// <summary>Brings the database to the form that this version needs.</summary>
public static class StoreSchema
{
    /// <summary>Applies the migrations that are missing and adds the shipped layouts; several processes may start at once.</summary>
    /// <exception cref="InvalidOperationException">A shipped layout clashes with what is stored under its name or paths.</exception>
    public static async Task MigrateAsync(IServiceProvider services, CancellationToken ct)
    {
        var dataSource = services.GetRequiredService<NpgsqlDataSource>();
        await using var connection = await dataSource.OpenConnectionAsync(ct);

        // The lock belongs to the transaction of this connection; the migrations run on another one.
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var wait = new NpgsqlCommand($"select pg_advisory_xact_lock({AdvisoryLock.Schema})", connection)
        {
            CommandTimeout = 0, // as long as another process migrates
        };
        await wait.ExecuteNonQueryAsync(ct);

        await using (var context = await services.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync(ct))
            await context.Database.MigrateAsync(ct);

        var layouts = services.GetRequiredService<LayoutStore>();
        foreach (var layout in ShippedLayouts.All)
        {
            var result = await layouts.AddLayoutAsync(layout, ct);
            if (!result.IsStored)
                throw new InvalidOperationException($"Shipped layout {layout.Name} is refused: {result}");
        }
    }
}
