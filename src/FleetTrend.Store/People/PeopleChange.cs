using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace FleetTrend.Store.People;

/// <summary>One at a time adds or changes people, so that no two take one name, and the last administrator stays.</summary>
public static class PeopleChange
{
    /// <summary>Begins a change; it lasts until the transaction ends.</summary>
    public static async Task<IDbContextTransaction> BeginAsync(FleetDbContext context, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(context);
        var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({AdvisoryLock.People})", ct);
        return transaction;
    }
}
