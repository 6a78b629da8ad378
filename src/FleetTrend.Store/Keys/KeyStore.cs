using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Keys;

/// <summary>Keys of callers. Only hashes of their secrets are stored.</summary>
public sealed class KeyStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Makes a key.</summary>
    /// <param name="name">For people, 1 to 60 characters.</param>
    /// <param name="source">The source it belongs to; null for none.</param>
    /// <param name="scopes">At least one; <see cref="KeyScope.RecordsWrite"/> needs a source.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The key with its text, or null where there is no such source.</returns>
    /// <exception cref="ArgumentException">No scope, or a scope that needs a source without one.</exception>
    public async Task<NewKey?> AddAsync(string name, string? source, IReadOnlyCollection<KeyScope> scopes, CancellationToken ct)
    {
        if (scopes.Count == 0 || (scopes.Contains(KeyScope.RecordsWrite) && source is null))
            throw new ArgumentException("A key has at least one scope, and records are written for a source.", nameof(scopes));
        await using var context = await contexts.CreateDbContextAsync(ct);
        var sourceRow = source is null ? null : await context.Sources.SingleOrDefaultAsync(row => row.Name == source, ct);
        return source is not null && sourceRow is null ? null : await InsertAsync(context, name, sourceRow, scopes, ct);
    }

    /// <summary>The source that a key would belong to; false where there is none of that name.</summary>
    public async Task<bool> IsSourceAsync(string source, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.Sources.AnyAsync(row => row.Name == source, ct);
    }

    /// <summary>Makes the first key of an empty table, for administering.</summary>
    /// <param name="name">For people.</param>
    /// <param name="handOver">Gives the key to somebody before it is stored; when that fails there is no key.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The key; null where there are keys, even revoked ones.</returns>
    public async Task<ApiKey?> AddFirstAsync(string name, Func<NewKey, Task> handOver, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(handOver);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({AdvisoryLock.FirstKey})", ct);
        if (await context.Keys.AnyAsync(ct))
            return null;
        var made = await InsertAsync(context, name, null, [KeyScope.Administer], ct);
        await handOver(made);
        await transaction.CommitAsync(ct);
        return made.Key;
    }

    /// <summary>Every key, revoked ones included: they are few, and a process keeps them at hand.</summary>
    public async Task<IReadOnlyDictionary<string, StoredKey>> ReadAllAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.Keys.AsNoTracking().Include(row => row.Source)
            .ToDictionaryAsync(row => row.Id, row => new StoredKey(ToKey(row), row.SecretHash), StringComparer.Ordinal, ct);
    }

    /// <summary>Keys in the order in which they were made, revoked ones included.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<ApiKey>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadId(pageToken) ?? 0;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.Keys.AsNoTracking().Include(row => row.Source)
            .Where(row => row.Number > after)
            .OrderBy(row => row.Number)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        var page = PageToken.Cut(rows, pageSize, row => PageToken.Write(row.Number));
        return new Page<ApiKey>([.. page.Items.Select(ToKey)], page.NextPageToken);
    }

    /// <summary>Revokes a key for ever; a second time changes nothing.</summary>
    /// <param name="id">Its identifier.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The key as it is then; null where there is none of that identifier.</returns>
    public async Task<ApiKey?> RevokeAsync(string id, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Database.ExecuteSqlAsync(
            $"update api_keys set revoke_time = clock_timestamp() where id = {id} and revoke_time is null", ct);
        var row = await context.Keys.AsNoTracking().Include(key => key.Source).SingleOrDefaultAsync(key => key.Id == id, ct);
        if (write)
            await transaction.CommitAsync(ct);
        return row is null ? null : ToKey(row);
    }

    /// <summary>Notes that a call has come with this key; at most one note a minute is written.</summary>
    public async Task MarkUsedAsync(string id, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await context.Database.ExecuteSqlAsync(
            $"""
            update api_keys set last_used_time = clock_timestamp()
            where id = {id} and (last_used_time is null or last_used_time < clock_timestamp() - interval '1 minute')
            """, ct);
    }

    private static async Task<NewKey> InsertAsync(
        FleetDbContext context, string name, SourceRow? source, IReadOnlyCollection<KeyScope> scopes, CancellationToken ct)
    {
        var text = KeyText.Create();
        var row = new ApiKeyRow
        {
            Id = text.Id,
            Name = name,
            Source = source,
            Scopes = [.. scopes.Distinct().Order()],
            SecretHash = text.SecretHash(),
        };
        context.Keys.Add(row);
        await context.SaveChangesAsync(ct);
        return new NewKey(ToKey(row), text.Reveal());
    }

    private static ApiKey ToKey(ApiKeyRow row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Source = row.Source?.Name,
        Scopes = row.Scopes,
        CreateTime = row.CreateTime,
        LastUsedTime = row.LastUsedTime,
        RevokeTime = row.RevokeTime,
    };
}
