using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Snapshots;

/// <summary>Computed trends, one snapshot per moment of knowledge.</summary>
public sealed class SnapshotStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Saves a snapshot. Where there is one of that moment it stays, and the answer is false.</summary>
    public async Task<bool> SaveAsync(StoredSnapshot snapshot, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.Database.ExecuteSqlAsync(
            $"""
            insert into snapshots (as_of, code_version, parameters_json, trends_json)
            values ({snapshot.AsOf.ToUniversalTime()}, {snapshot.CodeVersion}, {snapshot.ParametersJson}::json, {snapshot.TrendsJson}::json)
            on conflict (as_of) do nothing
            """,
            ct) == 1;
    }

    /// <summary>The latest, or null where there is none.</summary>
    public Task<StoredSnapshot?> LatestAsync(CancellationToken ct) => FirstAsync(rows => rows, ct);

    /// <summary>The latest of a moment strictly before, or null.</summary>
    public Task<StoredSnapshot?> LatestBeforeAsync(DateTimeOffset before, CancellationToken ct)
    {
        var moment = before.ToUniversalTime();
        return FirstAsync(rows => rows.Where(row => row.AsOf < moment), ct);
    }

    /// <summary>The one of exactly that moment, or null.</summary>
    public Task<StoredSnapshot?> AtAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var moment = asOf.ToUniversalTime();
        return FirstAsync(rows => rows.Where(row => row.AsOf == moment), ct);
    }

    private async Task<StoredSnapshot?> FirstAsync(
        Func<IQueryable<SnapshotRow>, IQueryable<SnapshotRow>> choose, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await choose(context.Snapshots.AsNoTracking())
            .OrderByDescending(row => row.AsOf)
            .Select(row => new StoredSnapshot
            {
                AsOf = row.AsOf,
                CodeVersion = row.CodeVersion,
                ParametersJson = row.ParametersJson,
                TrendsJson = row.TrendsJson,
            })
            .FirstOrDefaultAsync(ct);
    }
}
