using System.Collections.Frozen;
using FleetTrend.Records;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads records that belong to no aircraft.</summary>
internal static class FleetRecordRows
{
    private const int FirstContentColumn = 5;

    /// <summary>Of each the newest revision known at a moment, none that was taken back; by day, then source, then source record identifier.</summary>
    public static async Task<IReadOnlyList<Recorded<T>>> ReadAsync<T>(
        NpgsqlConnection connection, ContentColumns<T> content, DateTimeOffset asOf, CancellationToken ct)
        where T : RecordContent
    {
        await using var command = new NpgsqlCommand(
            $"""
            select record.id, source.name, record.source_record_id, record.revision, record.accept_time, {content.Columns}
            from {content.Table} content
            join records record on record.id = content.record_id
            join sources source on source.id = record.source_id
            where {NewestRevision.Condition}
            """,
            connection);
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        var records = new List<Recorded<T>>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var row = new ContentRow(
                reader, FirstContentColumn, reader.GetInt64(0), "",
                FrozenDictionary<long, List<Assignment>>.Empty, FrozenDictionary<long, List<LocationLook>>.Empty);
            var key = new RecordKey(reader.GetString(1), reader.GetString(2), reader.GetInt32(3));
            records.Add(new Recorded<T>(key, reader.GetFieldValue<DateTimeOffset>(4), content.Read(row)));
        }

        return
        [
            .. records.OrderBy(record => content.Date(record.Content))
                .ThenBy(record => record.Key.Source, StringComparer.Ordinal)
                .ThenBy(record => record.Key.SourceRecordId, StringComparer.Ordinal),
        ];
    }
}
