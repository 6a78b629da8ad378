using FleetTrend.Store.Histories;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace FleetTrend.Store.DataProblems;

/// <summary>Decisions that two findings of two sources are one event. Rows are added and never changed.</summary>
public sealed class FindingMergeStore(IDbContextFactory<FleetDbContext> contexts, NpgsqlDataSource dataSource)
{
    private const string Columns =
        """
        decision.id, kept.name, decision.kept_record_id, merged.name, decision.merged_record_id, decision.is_merged,
        decision.decided_by, decision.note, decision.decide_time
        """;

    private const string From =
        """
        from finding_merges decision
        join sources kept on kept.id = decision.kept_source_id
        join sources merged on merged.id = decision.merged_source_id
        """;

    /// <summary>Merges a finding into one of another source: from now on they are one event. A refresh of the trends is then owed.</summary>
    /// <param name="kept">The finding that stands.</param>
    /// <param name="merged">The finding that counts as the same event.</param>
    /// <param name="by">Who decides.</param>
    /// <param name="note">Why.</param>
    /// <param name="write">False to say what would become of it and write nothing; a merge made so has no identifier.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<MergeResult> MergeAsync(FindingName kept, FindingName merged, string by, string note, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await EnterAsync(connection, ct);
        var stands = await FindAsync(connection, kept, ct);
        var joins = await FindAsync(connection, merged, ct);
        if (stands is null || joins is null)
            return new MergeResult(stands is null ? MergeState.KeptNotFound : MergeState.MergedNotFound);
        if (await LatestAsync(connection, merged, ct) is { IsMerged: true } earlier)
            return new MergeResult(earlier.Kept == kept ? MergeState.Unchanged : MergeState.MergedElsewhere, earlier, joins.Registration);
        if (await LatestAsync(connection, kept, ct) is { IsMerged: true } elsewhere)
            return new MergeResult(MergeState.KeptIsMerged, elsewhere, joins.Registration);
        if (stands != joins)
            return new MergeResult(MergeState.NotAlike, null, joins.Registration);
        var stored = await AddAsync(connection, kept, merged, isMerged: true, by, note, ct);
        if (!write)
            return new MergeResult(MergeState.Stored, stored with { MergeId = 0 }, joins.Registration);
        await transaction.CommitAsync(ct);
        return new MergeResult(MergeState.Stored, stored, joins.Registration);
    }

    /// <summary>Takes a merge back: from now on the two are two events again. A refresh of the trends is then owed.</summary>
    /// <param name="merged">The finding that was merged into another.</param>
    /// <param name="by">Who decides.</param>
    /// <param name="note">Why.</param>
    /// <param name="write">False to say what would become of it and write nothing; a decision made so has no identifier.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<MergeResult> UnmergeAsync(FindingName merged, string by, string note, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await EnterAsync(connection, ct);
        var registration = (await FindAsync(connection, merged, ct))?.Registration;
        var latest = await LatestAsync(connection, merged, ct);
        if (latest is null)
            return new MergeResult(registration is null ? MergeState.MergedNotFound : MergeState.NotMerged);
        if (!latest.IsMerged)
            return new MergeResult(MergeState.Unchanged, latest, registration);
        var stored = await AddAsync(connection, latest.Kept, merged, isMerged: false, by, note, ct);
        if (!write)
            return new MergeResult(MergeState.Stored, stored with { MergeId = 0 }, registration);
        await transaction.CommitAsync(ct);
        return new MergeResult(MergeState.Stored, stored, registration);
    }

    /// <summary>The decision of that identifier; null where there is none.</summary>
    public async Task<StoredMerge?> GetAsync(long mergeId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand($"select {Columns} {From} where decision.id = $1");
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = mergeId });
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? Read(reader) : null;
    }

    /// <summary>The latest decision about a finding as the one that is merged into another; null where there is none.</summary>
    public async Task<StoredMerge?> LatestAsync(FindingName merged, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return await LatestAsync(connection, merged, ct);
    }

    /// <summary>Decisions, newest first.</summary>
    /// <param name="pageSize">Most to return, at least 1.</param>
    /// <param name="pageToken">From the page before; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredMerge>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await (
            from row in context.FindingMerges.AsNoTracking()
            join kept in context.Sources on row.KeptSourceId equals kept.Id
            join merged in context.Sources on row.MergedSourceId equals merged.Id
            where row.Id < before
            orderby row.Id descending
            select new StoredMerge
            {
                MergeId = row.Id,
                Kept = new FindingName(kept.Name, row.KeptRecordId),
                Merged = new FindingName(merged.Name, row.MergedRecordId),
                IsMerged = row.IsMerged,
                DecidedBy = row.DecidedBy,
                Note = row.Note,
                DecideTime = row.DecideTime,
            }).Take(pageSize + 1).ToListAsync(ct);
        return PageToken.Cut(rows, pageSize, merge => PageToken.Write(merge.MergeId));
    }

    /// <summary>One decision at a time, and as a writer of records does it: a moment of knowledge falls before or after it as a whole.</summary>
    private static async Task EnterAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        await using var locks = new NpgsqlCommand(
            $"select pg_advisory_xact_lock({AdvisoryLock.Merges}), pg_advisory_xact_lock_shared({AdvisoryLock.Knowledge})", connection);
        await locks.ExecuteNonQueryAsync(ct);
    }

    private static async Task<Place?> FindAsync(NpgsqlConnection connection, FindingName name, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            $"""
            select aircraft.registration, content.location, content.condition
            from records record
            join sources on sources.id = record.source_id
            join findings content on content.record_id = record.id
            join aircraft on aircraft.id = record.aircraft_id
            where sources.name = @source and record.source_record_id = @id and {NewestRevision.Condition}
            """,
            connection);
        command.Parameters.AddWithValue("source", name.Source);
        command.Parameters.AddWithValue("id", name.SourceRecordId);
        command.Parameters.AddWithValue("as_of", DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc)); // infinity: all that is committed
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? new Place(reader.GetString(0), reader.GetString(1), reader.GetInt16(2)) : null;
    }

    private static async Task<StoredMerge?> LatestAsync(NpgsqlConnection connection, FindingName merged, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            $"select {Columns} {From} where merged.name = $1 and decision.merged_record_id = $2 order by decision.id desc limit 1", connection)
        {
            Parameters = { new NpgsqlParameter { Value = merged.Source }, new NpgsqlParameter { Value = merged.SourceRecordId } },
        };
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? Read(reader) : null;
    }

    private static async Task<StoredMerge> AddAsync(
        NpgsqlConnection connection, FindingName kept, FindingName merged, bool isMerged, string by, string note, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            $"""
            with moment as (
                select greatest(
                    clock_timestamp(),
                    (select last_as_of + interval '1 microsecond' from knowledge),
                    (select max(decide_time) + interval '1 microsecond' from finding_merges)) as decide_time),
            added as (
                insert into finding_merges (kept_source_id, kept_record_id, merged_source_id, merged_record_id, is_merged, decided_by, note, decide_time)
                select kept.id, @kept_id, merged.id, @merged_id, @is_merged, @by, @note, moment.decide_time
                from moment, sources kept, sources merged where kept.name = @kept and merged.name = @merged
                returning *),
            owed as (insert into refresh_requests (request_time) select decide_time from added)
            select {Columns} {From.Replace("finding_merges decision", "added decision", StringComparison.Ordinal)}
            """,
            connection);
        command.Parameters.AddWithValue("kept", kept.Source);
        command.Parameters.AddWithValue("kept_id", kept.SourceRecordId);
        command.Parameters.AddWithValue("merged", merged.Source);
        command.Parameters.AddWithValue("merged_id", merged.SourceRecordId);
        command.Parameters.AddWithValue("is_merged", isMerged);
        command.Parameters.AddWithValue("by", by);
        command.Parameters.AddWithValue("note", note);
        await using var reader = await command.ExecuteReaderAsync(ct);
        await reader.ReadAsync(ct);
        return Read(reader);
    }

    private static StoredMerge Read(NpgsqlDataReader row) => new()
    {
        MergeId = row.GetInt64(0),
        Kept = new FindingName(row.GetString(1), row.GetString(2)),
        Merged = new FindingName(row.GetString(3), row.GetString(4)),
        IsMerged = row.GetBoolean(5),
        DecidedBy = row.GetString(6),
        Note = row.GetString(7),
        DecideTime = row.GetFieldValue<DateTimeOffset>(8),
    };

    private sealed record Place(string Registration, string Location, short Condition);
}
