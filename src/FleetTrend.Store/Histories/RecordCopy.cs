using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Histories;

/// <summary>Writes envelopes by binary COPY.</summary>
internal static class RecordCopy
{
    /// <summary>Writes <paramref name="accepted"/>, the record at an index under the identifier at that index.</summary>
    public static async Task WriteAsync(
        NpgsqlConnection connection,
        IReadOnlyList<AcceptedRecord> accepted,
        long[] ids,
        DateTimeOffset acceptTime,
        Func<string, int?> aircraftId,
        CancellationToken ct)
    {
        await using var copy = await connection.BeginBinaryImportAsync(
            "copy records (id, source_id, source_record_id, revision, kind, aircraft_id, accept_time, content_hash) from stdin (format binary)",
            ct);
        for (var i = 0; i < accepted.Count; i++)
        {
            var item = accepted[i];
            await copy.StartRowAsync(ct);
            await copy.WriteAsync(ids[i], NpgsqlDbType.Bigint, ct);
            await copy.WriteAsync(item.SourceId, NpgsqlDbType.Integer, ct);
            await copy.WriteAsync(item.Record.Key.SourceRecordId, NpgsqlDbType.Text, ct);
            await copy.WriteAsync(item.Record.Key.Revision, NpgsqlDbType.Integer, ct);
            await copy.WriteAsync((short)item.Record.Content.RecordKind, NpgsqlDbType.Smallint, ct);
            if (item.Record.Names.Registration is { } registration)
                await copy.WriteAsync(aircraftId(registration)!.Value, NpgsqlDbType.Integer, ct);
            else
                await copy.WriteNullAsync(ct);
            await copy.WriteAsync(acceptTime, NpgsqlDbType.TimestampTz, ct);
            await copy.WriteAsync(item.Record.ContentHash, NpgsqlDbType.Bytea, ct);
        }

        await copy.CompleteAsync(ct);
    }
}
