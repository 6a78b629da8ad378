using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Sources;

/// <summary>The systems that may push records.</summary>
public sealed class SourceStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Registers a source; the very same one again changes nothing, another title under its name is refused.</summary>
    /// <returns>What became of it, and the source that has the name now.</returns>
    public Task<(AddResult Result, Source Stored)> AddAsync(string name, string title, CancellationToken ct) => AddAsync(name, title, write: true, ct);

    /// <summary>What <see cref="AddAsync(string, string, CancellationToken)"/> would say now; nothing is written.</summary>
    public Task<(AddResult Result, Source Stored)> CheckAsync(string name, string title, CancellationToken ct) => AddAsync(name, title, write: false, ct);

    private async Task<(AddResult Result, Source Stored)> AddAsync(string name, string title, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        var added = await context.Database.ExecuteSqlAsync(
            $"insert into sources (name, title) values ({name}, {title}) on conflict (name) do nothing", ct);
        var row = await context.Sources.AsNoTracking().SingleAsync(source => source.Name == name, ct);
        if (write)
            await transaction.CommitAsync(ct);
        var result = added == 1 ? new AddResult(AddState.Added)
            : row.Title == title ? new AddResult(AddState.Unchanged)
            : new AddResult(AddState.NameInUse, name);
        return (result, ToSource(row));
    }

    /// <summary>Sources by name.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<Source>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadKey(pageToken) ?? "";
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.Sources.AsNoTracking()
            .Where(source => string.Compare(source.Name, after) > 0)
            .OrderBy(source => source.Name)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToSource)], pageSize, source => PageToken.Write(source.Name));
    }

    /// <summary>Names of all sources.</summary>
    public async Task<IReadOnlySet<string>> ReadNamesAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.Sources.Select(source => source.Name).ToHashSetAsync(StringComparer.Ordinal, ct);
    }

    /// <summary>By source, the days on which records of it were accepted, in a span; sources without any are left out.</summary>
    /// <param name="after">Only records that were accepted after this moment.</param>
    /// <param name="until">Only records that were accepted up to this moment.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<SourceDays>> ReadDaysAsync(DateTimeOffset after, DateTimeOffset until, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.Database.SqlQuery<SourceDay>(
            $"""
            select distinct source.name as source, (record.accept_time at time zone 'UTC')::date as day
            from records record join sources source on source.id = record.source_id
            where record.accept_time > {after.ToUniversalTime()} and record.accept_time <= {until.ToUniversalTime()}
            """).ToListAsync(ct);
        return
        [
            .. rows.GroupBy(row => row.Source, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new SourceDays(g.Key, [.. g.Select(row => row.Day).Order()])),
        ];
    }

    private sealed record SourceDay(string Source, DateOnly Day);

    private static Source ToSource(SourceRow row) => new(row.Name, row.Title, row.CreateTime);
}
