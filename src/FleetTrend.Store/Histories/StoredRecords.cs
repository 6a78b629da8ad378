using FleetTrend.Records;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads records one by one: the newest revision of one, all its revisions, or all records page by page.</summary>
public sealed class StoredRecords(NpgsqlDataSource dataSource)
{
    private const int FirstContentColumn = 1;
    private static readonly DateTime EndOfTime = DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc); // infinity: all that is committed

    /// <summary>The newest revision of a record, a retraction too.</summary>
    /// <param name="source">Name of the source.</param>
    /// <param name="sourceRecordId">The source's own identifier.</param>
    /// <param name="asOf">The moment of knowledge, included; null for now.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Null where no revision was known.</returns>
    public async Task<StoredRecord?> FindAsync(string source, string sourceRecordId, DateTimeOffset? asOf, CancellationToken ct)
    {
        await using var command = Command(
            """
            where source.name = @source and record.source_record_id = @source_record_id and record.accept_time <= @as_of
            order by record.revision desc limit 1
            """);
        command.Parameters.AddWithValue("source", source);
        command.Parameters.AddWithValue("source_record_id", sourceRecordId);
        command.Parameters.AddWithValue("as_of", asOf?.UtcDateTime ?? EndOfTime);
        return (await ReadAsync(command, ct)).SingleOrDefault();
    }

    /// <summary>Revisions of a record above <paramref name="afterRevision"/>, lowest first.</summary>
    /// <param name="source">Name of the source.</param>
    /// <param name="sourceRecordId">The source's own identifier.</param>
    /// <param name="afterRevision">0 for the first page.</param>
    /// <param name="count">Most to return.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<StoredRecord>> ReadRevisionsAsync(
        string source, string sourceRecordId, int afterRevision, int count, CancellationToken ct)
    {
        await using var command = Command(
            """
            where source.name = @source and record.source_record_id = @source_record_id and record.revision > @after
            order by record.revision limit @count
            """);
        command.Parameters.AddWithValue("source", source);
        command.Parameters.AddWithValue("source_record_id", sourceRecordId);
        command.Parameters.AddWithValue("after", afterRevision);
        command.Parameters.AddWithValue("count", count);
        return await ReadAsync(command, ct);
    }

    /// <summary>What was known at a moment: of every record the newest revision, none that was taken back; by identifier.</summary>
    /// <param name="filter">Which records.</param>
    /// <param name="asOf">The moment, included; with one of <see cref="Knowledge.FixAsOfAsync"/> the answer is the same for ever.</param>
    /// <param name="afterId">Only those after this one; 0 for the first page.</param>
    /// <param name="count">Most to return.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<StoredRecord>> ReadAsync(
        RecordFilter filter, DateTimeOffset asOf, long afterId, int count, CancellationToken ct)
    {
        var only = new List<string>();
        await using var command = Command("");
        void Add(string condition, string name, object? value)
        {
            if (value is null)
                return;
            only.Add($"and {condition} ");
            command.Parameters.AddWithValue(name, value);
        }

        Add("aircraft.registration = @registration", "registration", filter.Registration);
        Add("source.name = @source", "source", filter.Source);
        Add("record.kind = @kind", "kind", (short?)filter.Kind);
        command.CommandText +=
            $"""
            where record.id > @after and record.kind <> {(int)RecordKind.Retraction} {string.Concat(only)} and {NewestRevision.Condition}
            order by record.id limit @count
            """;
        command.Parameters.AddWithValue("as_of", asOf.UtcDateTime);
        command.Parameters.AddWithValue("after", afterId);
        command.Parameters.AddWithValue("count", count);
        return await ReadAsync(command, ct);
    }

    private NpgsqlCommand Command(string condition) => dataSource.CreateCommand(
        $"""
        select record.id, source.name, record.source_record_id, record.revision, record.accept_time, record.kind, aircraft.registration
        from records record join sources source on source.id = record.source_id left join aircraft on aircraft.id = record.aircraft_id
        {condition}
        """ + "\n");

    private async Task<IReadOnlyList<StoredRecord>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        var rows = new List<(long Id, RecordKey Key, DateTimeOffset AcceptTime, RecordKind Kind, string Registration)>();
        await using (var reader = await command.ExecuteReaderAsync(ct))
        {
            while (await reader.ReadAsync(ct))
            {
                rows.Add((
                    reader.GetInt64(0), new RecordKey(reader.GetString(1), reader.GetString(2), reader.GetInt32(3)),
                    reader.GetFieldValue<DateTimeOffset>(4), (RecordKind)reader.GetInt16(5),
                    await reader.IsDBNullAsync(6, ct) ? "" : reader.GetString(6)));
            }
        }

        // Records are never changed: reading their contents afterwards reads the same.
        var contents = await ReadContentsAsync(rows.ToDictionary(row => row.Id, row => (row.Kind, row.Registration)), ct);
        return [.. rows.Select(row => new StoredRecord(row.Id, row.Key, row.AcceptTime, contents[row.Id]))];
    }

    private async Task<Dictionary<long, RecordContent>> ReadContentsAsync(
        Dictionary<long, (RecordKind Kind, string Registration)> records, CancellationToken ct)
    {
        var contents = new Dictionary<long, RecordContent>();
        if (records.Count == 0)
            return contents;
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        var ids = records.ToLookup(record => record.Value.Kind, record => record.Key);
        var assignments = await AssignmentRows.ReadAsync(connection, [.. ids[RecordKind.Airframe]], ct);
        var looks = ids.Contains(RecordKind.Inspection)
            ? await LookRows.ReadAsync(connection, [.. ids[RecordKind.Inspection]], ct)
            : new Dictionary<long, List<LocationLook>>();
        foreach (var kind in ids)
        {
            var content = ContentTables.Get(kind.Key);
            await using var command = new NpgsqlCommand(
                $"select content.record_id, {content.Columns} from {content.Table} content where content.record_id = any(@ids)", connection);
            command.Parameters.AddWithValue("ids", kind.ToArray());
            await using var reader = await command.ExecuteReaderAsync(ct);
            while (await reader.ReadAsync(ct))
            {
                var id = reader.GetInt64(0);
                contents.Add(id, content.ReadAny(new ContentRow(reader, FirstContentColumn, id, records[id].Registration, assignments, looks)));
            }
        }

        return contents;
    }
}
