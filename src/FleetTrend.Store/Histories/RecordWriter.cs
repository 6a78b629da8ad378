using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Writes records. A batch is one transaction of a fixed number of statements, whatever its size.</summary>
public sealed class RecordWriter(NpgsqlDataSource dataSource)
{
    private const string OneRowPerRevision = "ix_records_source_id_source_record_id_revision";
    private const string OneRowPerHeldRevision = "ix_held_records_source_id_source_record_id_revision";
    private const int MostAttempts = 20;

    private static readonly IReadOnlyDictionary<string, int> Nobody = new Dictionary<string, int>(StringComparer.Ordinal);

    private readonly References references = new();

    /// <summary>
    /// Stores records as if they were sent one after another. When it returns, what it calls accepted survives a crash. The same
    /// record again is unchanged; a record that clashes is a conflict and stops no other. A refresh of the trends is then owed.
    /// </summary>
    /// <returns>What became of each, in the same order.</returns>
    /// <exception cref="PostgresException">The database cannot take a value that intake should have refused: nothing was written.</exception>
    public async Task<IReadOnlyList<SaveResult>> SaveAsync(IReadOnlyList<NewRecord> records, CancellationToken ct)
    {
        if (records.Count == 0)
            return [];
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await SaveOnceAsync(records, ct);
            }
            catch (PostgresException e) when (attempt < MostAttempts && LostRace(e))
            {
                // Another writer has stored one of these records in the meantime: the next attempt sees it.
            }
        }
    }

    /// <summary>What <see cref="SaveAsync"/> would say now; nothing is written, and what it would accept has no accept time.</summary>
    /// <param name="records">The records.</param>
    /// <param name="registered">Registration marks that count as registered beside those that are.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>What would become of each, in the same order.</returns>
    public async Task<IReadOnlyList<SaveResult>> CheckAsync(
        IReadOnlyList<NewRecord> records, IEnumerable<string> registered, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await references.LoadAsync(connection, records, ct);
        var (stored, waiting) = await ReadRevisionsAsync(connection, records, ct);
        var decision = new BatchDecision(references, stored, waiting, acceptTime: default, registered.ToHashSet(StringComparer.Ordinal));
        return [.. records.Select(decision.Decide)];
    }

    private static bool LostRace(PostgresException e) =>
        e.SqlState == PostgresErrorCodes.DeadlockDetected
        || (e.SqlState == PostgresErrorCodes.UniqueViolation && e.ConstraintName is OneRowPerRevision or OneRowPerHeldRevision);

    private async Task<IReadOnlyList<SaveResult>> SaveOnceAsync(IReadOnlyList<NewRecord> records, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await references.LoadAsync(connection, records, ct);
        var acceptTime = await EnterAsync(connection, ct);
        var (stored, waiting) = await ReadRevisionsAsync(connection, records, ct);
        var decision = new BatchDecision(references, stored, waiting, acceptTime, new(StringComparer.Ordinal));
        var results = records.Select(decision.Decide).ToList();
        if (!decision.Changes)
            return results;

        await HeldRows.HoldAsync(connection, decision.Held, acceptTime, ct);
        await HeldRows.ReleaseAsync(connection, decision.Released, acceptTime, ct);
        var registered = decision.Accepted.Count == 0 ? Nobody : await WriteAsync(connection, decision, acceptTime, ct);
        await transaction.CommitAsync(ct);
        references.Keep(registered);
        return results;
    }

    /// <returns>Identifiers of the aircraft that the batch registers, by registration mark.</returns>
    private async Task<IReadOnlyDictionary<string, int>> WriteAsync(
        NpgsqlConnection connection, BatchDecision decision, DateTimeOffset acceptTime, CancellationToken ct)
    {
        // Every writer takes rows in the same order, so that two with the same records wait for each other and do not lock up.
        var accepted = decision.Accepted
            .OrderBy(item => item.SourceId)
            .ThenBy(item => item.Record.Key.SourceRecordId, StringComparer.Ordinal)
            .ThenBy(item => item.Record.Key.Revision)
            .ToList();
        var registered = await RegisterAsync(connection, decision.Registered, ct);
        var ids = await TakeIdsAsync(connection, accepted.Count, ct);
        await RecordCopy.WriteAsync(
            connection, accepted, ids, acceptTime, name => registered.TryGetValue(name, out var id) ? id : references.Aircraft(name), ct);
        await ContentCopy.WriteAsync(connection, accepted, ids, name => references.TypeGroup(name)!.Value, ct);
        await RequestRefreshAsync(connection, acceptTime, ct);
        return registered;
    }

    /// <summary>Takes the locks of a writer and then the accept time, which is later than every as-of moment fixed so far.</summary>
    private static async Task<DateTimeOffset> EnterAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        await using var batch = new NpgsqlBatch(connection);
        batch.BatchCommands.Add(new NpgsqlBatchCommand("set local synchronous_commit = on"));
        batch.BatchCommands.Add(new NpgsqlBatchCommand($"select pg_advisory_xact_lock_shared({AdvisoryLock.Knowledge})"));

        batch.BatchCommands.Add(new NpgsqlBatchCommand(
            "select greatest(clock_timestamp(), (select last_as_of + interval '1 microsecond' from knowledge)) as accept_time"));
        await using var reader = await batch.ExecuteReaderAsync(ct);
        while (reader.FieldCount == 0 || reader.GetName(0) != "accept_time")
            await reader.NextResultAsync(ct);
        await reader.ReadAsync(ct);
        return reader.GetFieldValue<DateTimeOffset>(0);
    }

    private async Task<(Dictionary<(int, string, int), StoredRevision> Stored, Dictionary<(int, string, int), HeldRevision> Waiting)> ReadRevisionsAsync(
        NpgsqlConnection connection, IReadOnlyList<NewRecord> records, CancellationToken ct)
    {
        var keys = records
            .Select(record => (SourceId: references.Source(record.Key.Source), record.Key.SourceRecordId, record.Key.Revision))
            .Where(key => key.SourceId is not null)
            .Distinct()
            .ToList();
        await using var command = new NpgsqlCommand(
            """
            select stored.source_id, stored.source_record_id, stored.revision, stored.content_hash, stored.accept_time, null as held_id
            from unnest($1, $2, $3) as sent(source_id, source_record_id, revision)
            join records stored using (source_id, source_record_id, revision)
            union all
            select held.source_id, held.source_record_id, held.revision, held.content_hash, held.hold_time, held.id
            from unnest($1, $2, $3) as sent(source_id, source_record_id, revision)
            join held_records held using (source_id, source_record_id, revision)
            where held.release_time is null
            """,
            connection);
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. keys.Select(key => key.SourceId!.Value)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. keys.Select(key => key.SourceRecordId)] });
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. keys.Select(key => key.Revision)] });
        var stored = new Dictionary<(int, string, int), StoredRevision>();
        var waiting = new Dictionary<(int, string, int), HeldRevision>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var key = (reader.GetInt32(0), reader.GetString(1), reader.GetInt32(2));
            var (hash, time) = (reader.GetFieldValue<byte[]>(3), reader.GetFieldValue<DateTimeOffset>(4));
            if (await reader.IsDBNullAsync(5, ct))
                stored.Add(key, new StoredRevision(hash, time));
            else
                waiting.Add(key, new HeldRevision(reader.GetInt64(5), hash, time));
        }

        return (stored, waiting);
    }

    private static async Task<IReadOnlyDictionary<string, int>> RegisterAsync(
        NpgsqlConnection connection, IReadOnlyCollection<string> registrations, CancellationToken ct)
    {
        var ids = new Dictionary<string, int>(StringComparer.Ordinal);
        if (registrations.Count == 0)
            return ids;
        var parameter = registrations.Order(StringComparer.Ordinal).ToArray();
        await using var batch = new NpgsqlBatch(connection)
        {
            BatchCommands =
            {
                new NpgsqlBatchCommand("insert into aircraft (registration) select unnest($1) on conflict do nothing")
                {
                    Parameters = { new NpgsqlParameter { Value = parameter } },
                },
                new NpgsqlBatchCommand("select registration, id from aircraft where registration = any($1)")
                {
                    Parameters = { new NpgsqlParameter { Value = parameter } },
                },
            },
        };
        await using var reader = await batch.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            ids.Add(reader.GetString(0), reader.GetInt32(1));
        return ids;
    }

    private static async Task<long[]> TakeIdsAsync(NpgsqlConnection connection, int count, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand("select nextval('records_id_seq') from generate_series(1, $1)", connection)
        {
            Parameters = { new NpgsqlParameter { Value = count } },
        };
        var ids = new long[count];
        await using var reader = await command.ExecuteReaderAsync(ct);
        for (var i = 0; await reader.ReadAsync(ct); i++)
            ids[i] = reader.GetInt64(0);
        return ids;
    }

    private static async Task RequestRefreshAsync(NpgsqlConnection connection, DateTimeOffset acceptTime, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand("insert into refresh_requests (request_time) values ($1)", connection)
        {
            Parameters = { new NpgsqlParameter { Value = acceptTime } },
        };
        await command.ExecuteNonQueryAsync(ct);
    }
}
