using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Recipients;

/// <summary>Who gets which report.</summary>
public sealed class RecipientStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Sets who gets the report of a base, in place of those who did; nobody stops it. Repeats count once.</summary>
    /// <param name="base">The base.</param>
    /// <param name="addresses">Mail addresses.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>As stored.</returns>
    public async Task<BaseRecipients> SetAsync(string @base, IReadOnlyList<string> addresses, bool write, CancellationToken ct)
    {
        var wanted = addresses.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        if (!write)
            return new BaseRecipients(@base, wanted);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Recipients.Where(row => row.Base == @base && !wanted.Contains(row.Address)).ExecuteDeleteAsync(ct);
        await context.Database.ExecuteSqlAsync(
            $"insert into recipients (base, address) select {@base}, unnest({wanted}) on conflict do nothing", ct);
        await transaction.CommitAsync(ct);
        return new BaseRecipients(@base, wanted);
    }

    /// <summary>Every base that has somebody, in ordinal order.</summary>
    public async Task<IReadOnlyList<BaseRecipients>> ListAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await Ordered(context).ToListAsync(ct);
        return [.. rows.GroupBy(row => row.Base, row => row.Address, StringComparer.Ordinal)
            .Select(group => new BaseRecipients(group.Key, [.. group]))];
    }

    /// <summary>Addresses of one base, in ordinal order.</summary>
    public async Task<IReadOnlyList<string>> ReadAsync(string @base, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await Ordered(context).Where(row => row.Base == @base).Select(row => row.Address).ToListAsync(ct);
    }

    private static IQueryable<RecipientRow> Ordered(FleetDbContext context) =>
        context.Recipients.AsNoTracking().OrderBy(row => row.Base).ThenBy(row => row.Address);
}
