using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Looks up whether the very same record was accepted, or held, before.</summary>
public sealed class AcceptedRecords(NpgsqlDataSource dataSource)
{
    /// <summary>Since when each record is stored or waits, where one with that key and that content does; else null.</summary>
    /// <param name="records">Keys with the SHA-256 of the content.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>In the same order: unchanged, held, or null.</returns>
    public async Task<IReadOnlyList<SaveResult?>> FindAsync(
        IReadOnlyList<(RecordKey Key, byte[] ContentHash)> records, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            select sent.place, stored.accept_time, held.hold_time
            from unnest($1, $2, $3, $4) with ordinality as sent(source, source_record_id, revision, content_hash, place)
            join sources on sources.name = sent.source
            left join records stored on stored.source_id = sources.id and stored.source_record_id = sent.source_record_id
                and stored.revision = sent.revision and stored.content_hash = sent.content_hash
            left join held_records held on held.source_id = sources.id and held.source_record_id = sent.source_record_id
                and held.revision = sent.revision and held.content_hash = sent.content_hash and held.release_time is null
            where stored.id is not null or held.id is not null
            """);
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. records.Select(r => r.Key.Source)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. records.Select(r => r.Key.SourceRecordId)] });
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. records.Select(r => r.Key.Revision)] });
        command.Parameters.Add(new NpgsqlParameter<byte[][]> { TypedValue = [.. records.Select(r => r.ContentHash)] });
        var found = new SaveResult?[records.Count];
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            found[reader.GetInt64(0) - 1] = await reader.IsDBNullAsync(1, ct)
                ? new SaveResult.Held(reader.GetFieldValue<DateTimeOffset>(2), IsNew: false)
                : new SaveResult.Unchanged(reader.GetFieldValue<DateTimeOffset>(1));
        }

        return found;
    }
}
