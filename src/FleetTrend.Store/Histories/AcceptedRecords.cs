using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Looks up whether the very same record was accepted before.</summary>
public sealed class AcceptedRecords(NpgsqlDataSource dataSource)
{
    /// <summary>When each record was accepted, where one with that key and that content is stored; else null.</summary>
    /// <param name="records">Keys with the SHA-256 of the content.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>In the same order.</returns>
    public async Task<IReadOnlyList<DateTimeOffset?>> FindAsync(
        IReadOnlyList<(RecordKey Key, byte[] ContentHash)> records, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            select sent.place, stored.accept_time
            from unnest($1, $2, $3, $4) with ordinality as sent(source, source_record_id, revision, content_hash, place)
            join sources on sources.name = sent.source
            join records stored on stored.source_id = sources.id and stored.source_record_id = sent.source_record_id
                and stored.revision = sent.revision and stored.content_hash = sent.content_hash
            """);
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. records.Select(r => r.Key.Source)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. records.Select(r => r.Key.SourceRecordId)] });
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. records.Select(r => r.Key.Revision)] });
        command.Parameters.Add(new NpgsqlParameter<byte[][]> { TypedValue = [.. records.Select(r => r.ContentHash)] });
        var found = new DateTimeOffset?[records.Count];
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            found[reader.GetInt64(0) - 1] = reader.GetFieldValue<DateTimeOffset>(1);
        return found;
    }
}
