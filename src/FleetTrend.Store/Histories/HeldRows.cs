using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Writes what a batch holds and releases.</summary>
internal static class HeldRows
{
    /// <summary>Adds records that wait from now on.</summary>
    public static async Task HoldAsync(
        NpgsqlConnection connection, IReadOnlyList<(int SourceId, NewRecord.ToHold Record)> held,
        DateTimeOffset holdTime, CancellationToken ct)
    {
        if (held.Count == 0)
            return;
        await using var command = new NpgsqlCommand(
            """
            with sent as (
                select * from unnest($1, $2, $3, $4, $5, $6) with ordinality
                    as line(source_id, source_record_id, revision, registration, record, content_hash, place)),
            added as (
                insert into held_records (source_id, source_record_id, revision, registration, record, content_hash, hold_time)
                select source_id, source_record_id, revision, registration, record, content_hash, $7 from sent order by place
                returning id, source_id, source_record_id, revision)
            insert into held_codes (held_record_id, kind, code)
            select added.id, line.kind, line.code
            from unnest($8, $9, $10) as line(place, kind, code)
            join sent on sent.place = line.place
            join added using (source_id, source_record_id, revision)
            """,
            connection);
        var codes = held.SelectMany(item => item.Record.Content.Codes.Distinct(), (item, code) => (item, code)).ToList();
        var places = held.Index().ToDictionary(line => line.Item.Record.Key, line => line.Index + 1L);
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. held.Select(item => item.SourceId)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. held.Select(item => item.Record.Key.SourceRecordId)] });
        command.Parameters.Add(new NpgsqlParameter<int[]> { TypedValue = [.. held.Select(item => item.Record.Key.Revision)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. held.Select(item => item.Record.Content.Registration)] });
        command.Parameters.Add(new NpgsqlParameter<byte[][]> { TypedValue = [.. held.Select(item => item.Record.Content.Record)] });
        command.Parameters.Add(new NpgsqlParameter<byte[][]> { TypedValue = [.. held.Select(item => item.Record.ContentHash)] });
        command.Parameters.Add(new NpgsqlParameter<DateTimeOffset> { TypedValue = holdTime });
        command.Parameters.Add(new NpgsqlParameter<long[]> { TypedValue = [.. codes.Select(line => places[line.item.Record.Key])] });
        command.Parameters.Add(new NpgsqlParameter<short[]> { TypedValue = [.. codes.Select(line => (short)line.code.Kind)] });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. codes.Select(line => line.code.Code)] });
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Marks records that have waited and are accepted now.</summary>
    public static async Task ReleaseAsync(
        NpgsqlConnection connection, IReadOnlyCollection<long> ids, DateTimeOffset releaseTime, CancellationToken ct)
    {
        if (ids.Count == 0)
            return;
        await using var command = new NpgsqlCommand(
            "update held_records set release_time = $2 where id = any($1) and release_time is null", connection);
        command.Parameters.Add(new NpgsqlParameter<long[]> { TypedValue = [.. ids.Order()] });
        command.Parameters.Add(new NpgsqlParameter<DateTimeOffset> { TypedValue = releaseTime });
        await command.ExecuteNonQueryAsync(ct);
    }
}
