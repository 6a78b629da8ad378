using FleetTrend.Records;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads the records of one kind that are known at a moment.</summary>
internal sealed class RecordRows(
    NpgsqlConnection connection,
    DateTimeOffset asOf,
    int[]? aircraftIds,
    IReadOnlyDictionary<int, string> sources,
    IReadOnlyDictionary<int, string> names,
    IReadOnlyDictionary<long, List<Assignment>> assignments,
    IReadOnlyDictionary<long, List<LocationLook>> looks)
{
    private const int FirstContentColumn = 6;

    /// <summary>Records of a kind by aircraft, ordered by date, then source, then source record identifier.</summary>
    /// <param name="content">The kind.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<T>>>> ReadAsync<T>(
        ContentColumns<T> content, CancellationToken ct)
        where T : RecordContent
    {
        await using var command = new NpgsqlCommand(
            $"""
            select record.id, record.aircraft_id, record.source_id, record.source_record_id, record.revision, record.accept_time, {content.Columns}
            from records record join {content.Table} content on content.record_id = record.id
            where record.kind = @kind and {NewestRevision.Condition} {(aircraftIds is null ? "" : "and record.aircraft_id = any(@aircraft)")}
            """,
            connection);
        command.Parameters.AddWithValue("kind", (short)content.Kind);
        command.Parameters.AddWithValue("as_of", asOf);
        if (aircraftIds is not null)
            command.Parameters.AddWithValue("aircraft", aircraftIds);

        var records = new Dictionary<int, List<Recorded<T>>>();
        await using (var reader = await command.ExecuteReaderAsync(ct))
        {
            while (await reader.ReadAsync(ct))
            {
                var aircraft = reader.GetInt32(1);
                var key = new RecordKey(sources[reader.GetInt32(2)], reader.GetString(3), reader.GetInt32(4));
                if (!records.TryGetValue(aircraft, out var list))
                    records.Add(aircraft, list = []);
                list.Add(new Recorded<T>(key, reader.GetFieldValue<DateTimeOffset>(5),
                    content.Read(new ContentRow(reader, FirstContentColumn, reader.GetInt64(0), names[aircraft], assignments, looks))));
            }
        }

        // Sorted here and not by the server: the order must not depend on its version, plan or locale.
        return records.ToDictionary(
            group => group.Key,
            IReadOnlyList<Recorded<T>> (group) =>
            [
                .. group.Value
                    .OrderBy(item => content.Date(item.Content))
                    .ThenBy(item => item.Key.Source, StringComparer.Ordinal)
                    .ThenBy(item => item.Key.SourceRecordId, StringComparer.Ordinal),
            ]);
    }
}
