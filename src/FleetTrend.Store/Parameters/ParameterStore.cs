using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Parameters;

/// <summary>Parameters of the trends with their history. Rows are added and never changed.</summary>
public sealed class ParameterStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>The parameters that were in force at a moment of knowledge.</summary>
    /// <param name="asOf">The moment; null for now.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<ParameterRevision> ReadAsync(DateTimeOffset? asOf, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await InForceAsync(context, asOf, ct);
    }

    /// <summary>Changes the parameters from now on. A refresh of the trends is then owed, at once.</summary>
    /// <param name="replaced">The revision that the caller has seen in force; where it is another by now, nothing is changed.</param>
    /// <param name="valuesJson">Every parameter.</param>
    /// <param name="isInForce">Whether a revision holds these values already; then nothing is changed either.</param>
    /// <param name="by">Who changes them.</param>
    /// <param name="note">Why.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<ParameterChange> ChangeAsync(
        int replaced, string valuesJson, Func<ParameterRevision, bool> isInForce, string by, string note, bool write, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(isInForce);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);

        // One change at a time, and as a writer of records does it: a moment of knowledge falls before or after it as a whole.
        await context.Database.ExecuteSqlRawAsync(
            $"select pg_advisory_xact_lock({AdvisoryLock.Parameters}), pg_advisory_xact_lock_shared({AdvisoryLock.Knowledge})", ct);
        var now = await InForceAsync(context, null, ct);
        if (isInForce(now))
            return new ParameterChange(ParameterChangeState.Unchanged, now);
        if (now.Revision != replaced)
            return new ParameterChange(ParameterChangeState.ChangedMeanwhile, now);
        var row = new ParameterRevisionRow
        {
            Revision = now.Revision + 1,
            ValuesJson = valuesJson,
            ChangedBy = by,
            Note = note,
            // Later than every moment fixed before, also where the clock was set back.
            ChangeTime = (await context.Database.SqlQuery<DateTimeOffset>(
                $"""
                select greatest(
                    clock_timestamp(), (select last_as_of + interval '1 microsecond' from knowledge),
                    (select max(change_time) + interval '1 microsecond' from parameter_revisions)) as "Value"
                """).ToListAsync(ct))[0],
        };
        context.Add(row);
        context.Add(new RefreshRequestRow { RequestTime = row.ChangeTime, AtOnce = true });
        await context.SaveChangesAsync(ct);
        if (write)
            await transaction.CommitAsync(ct);
        return new ParameterChange(ParameterChangeState.Stored, ToRevision(row));
    }

    /// <summary>Every change, newest first.</summary>
    /// <param name="pageSize">Most to return, at least 1.</param>
    /// <param name="pageToken">From the page before; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<ParameterRevision>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.ParameterRevisions.AsNoTracking()
            .Where(row => row.Revision < before)
            .OrderByDescending(row => row.Revision)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToRevision)], pageSize, revision => PageToken.Write(revision.Revision));
    }

    private static async Task<ParameterRevision> InForceAsync(FleetDbContext context, DateTimeOffset? asOf, CancellationToken ct)
    {
        var moment = asOf?.ToUniversalTime();
        var row = await context.ParameterRevisions.AsNoTracking()
            .Where(row => moment == null || row.ChangeTime <= moment)
            .OrderByDescending(row => row.Revision)
            .FirstOrDefaultAsync(ct);
        return row is null ? ParameterRevision.Shipped : ToRevision(row);
    }

    private static ParameterRevision ToRevision(ParameterRevisionRow row) => new(row.Revision, row.ValuesJson)
    {
        ChangeTime = row.ChangeTime,
        ChangedBy = row.ChangedBy,
        Note = row.Note,
    };
}
