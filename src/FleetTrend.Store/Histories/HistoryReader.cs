using System.Data;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Layouts;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads what was known at a moment.</summary>
public sealed class HistoryReader(NpgsqlDataSource dataSource, LayoutStore layouts)
{
    /// <summary>
    /// The fleet: of each source record the highest revision accepted by <paramref name="asOf"/>, none that was taken back by then.
    /// With a moment of <see cref="Knowledge.FixAsOfAsync"/>, or one before it, the answer is the same for ever.
    /// An aircraft of which every airframe record was taken back counts as never registered and has no history.
    /// </summary>
    /// <param name="asOf">The moment of knowledge, included.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<FleetHistory> ReadAsync(DateTimeOffset asOf, CancellationToken ct) =>
        await ReadAircraftAsync(await ReadWithoutAircraftAsync(asOf, ct), null, ct);

    /// <summary>What is known of the fleet besides its aircraft.</summary>
    /// <param name="asOf">The moment of knowledge, included.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<FleetHistory> ReadWithoutAircraftAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return new FleetHistory
        {
            AsOf = asOf.ToUniversalTime(),
            Aircraft = [],
            RetractionsAlone = await ReadRetractionsAloneAsync(connection, asOf, ct),
            PracticeChanges = await FleetRecordRows.ReadAsync(connection, ContentTables.PracticeChanges, asOf, ct),
            StockCounts = await FleetRecordRows.ReadAsync(connection, ContentTables.StockCounts, asOf, ct),
            FlagClosings = await FlagClosingRows.ReadAsync(connection, asOf, ct),
            // Layouts and type groups never change: what came since changes nothing.
            Layouts = await layouts.ReadByTypeGroupAsync(ct),
        };
    }

    /// <summary>The same with the histories of aircraft as known at its moment.</summary>
    /// <param name="fleet">What is known besides; it must be as new as the aircraft, so that its layouts hold all that their records name.</param>
    /// <param name="aircraftIds">Which; null for all. What is no aircraft then, or was taken back, is left out.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<FleetHistory> ReadAircraftAsync(FleetHistory fleet, IReadOnlyCollection<int>? aircraftIds, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(fleet);
        int[]? ids = aircraftIds is null ? null : [.. aircraftIds];
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, ct);
        if (ids is not null)
            await ByIndexAsync(connection, ct);
        var names = await ReadNamesAsync(connection, "select id, registration from aircraft", ct);
        var sources = await ReadNamesAsync(connection, "select id, name from sources", ct);
        var assignments = await AssignmentRows.ReadOfAircraftAsync(connection, ids, ct);
        var looks = await LookRows.ReadOfAircraftAsync(connection, ids, ct);
        var rows = new RecordRows(connection, fleet.AsOf, ids, sources, names, assignments, looks);
        var airframes = await rows.ReadAsync(ContentTables.Airframes, ct);
        var readings = await rows.ReadAsync(ContentTables.Readings, ct);
        var changes = await rows.ReadAsync(ContentTables.MeterChanges, ct);
        var installations = await rows.ReadAsync(ContentTables.Installations, ct);
        var removals = await rows.ReadAsync(ContentTables.Removals, ct);
        var inspections = await rows.ReadAsync(ContentTables.Inspections, ct);
        var findings = await rows.ReadAsync(ContentTables.Findings, ct);
        var actions = await rows.ReadAsync(ContentTables.Actions, ct);
        var merges = await MergeRows.ReadAsync(connection, fleet.AsOf, ct);
        return fleet with
        {
            Aircraft =
            [
                .. airframes
                    .Select(aircraft => new AircraftHistory
                    {
                        Registration = names[aircraft.Key],
                        Airframes = aircraft.Value,
                        Readings = readings.GetValueOrDefault(aircraft.Key, []),
                        MeterChanges = changes.GetValueOrDefault(aircraft.Key, []),
                        Installations = installations.GetValueOrDefault(aircraft.Key, []),
                        Removals = removals.GetValueOrDefault(aircraft.Key, []),
                        Inspections = inspections.GetValueOrDefault(aircraft.Key, []),
                        Findings = findings.GetValueOrDefault(aircraft.Key, []),
                        Actions = actions.GetValueOrDefault(aircraft.Key, []),
                        Merges = merges.Count == 0 ? [] : MergesOf(findings.GetValueOrDefault(aircraft.Key, []), merges),
                    })
                    .OrderBy(history => history.Registration, StringComparer.Ordinal),
            ],
        };
    }

    /// <summary>
    /// Some aircraft cost what they hold, not what the fleet holds: left to itself the planner reads whole tables again for every few aircraft.
    /// </summary>
    private static async Task ByIndexAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            "set local enable_seqscan = off; set local max_parallel_workers_per_gather = 0; set local jit = off", connection);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Retractions known at a moment whose record never came, ordered by source and source record identifier.</summary>
    private static async Task<IReadOnlyList<Recorded<Retraction>>> ReadRetractionsAloneAsync(
        NpgsqlConnection connection, DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            $"""
            select sources.name, record.source_record_id, record.revision, record.accept_time, content.reason
            from records record
            join retractions content on content.record_id = record.id
            join sources on sources.id = record.source_id
            where record.kind = 9 and {NewestRevision.Condition} and not exists (
                select from records sent
                where sent.source_id = record.source_id and sent.source_record_id = record.source_record_id
                  and sent.kind <> 9 and sent.accept_time <= @as_of) and not exists (
                select from held_records sent
                where sent.source_id = record.source_id and sent.source_record_id = record.source_record_id and sent.hold_time <= @as_of)
            """,
            connection);
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        var alone = new List<Recorded<Retraction>>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var key = new RecordKey(reader.GetString(0), reader.GetString(1), reader.GetInt32(2));
            alone.Add(new Recorded<Retraction>(key, reader.GetFieldValue<DateTimeOffset>(3), new Retraction(reader.GetString(4))));
        }

        return [.. alone.OrderBy(r => r.Key.Source, StringComparer.Ordinal).ThenBy(r => r.Key.SourceRecordId, StringComparer.Ordinal)];
    }

    private static List<FindingMerge> MergesOf(
        IReadOnlyList<Recorded<Finding>> findings, IReadOnlyDictionary<(string Source, string Id), FindingMerge> merges) =>
        [.. findings.Select(f => merges.GetValueOrDefault((f.Key.Source, f.Key.SourceRecordId))).OfType<FindingMerge>()];

    private static async Task<Dictionary<int, string>> ReadNamesAsync(NpgsqlConnection connection, string statement, CancellationToken ct)
    {
        var names = new Dictionary<int, string>();
        await using var command = new NpgsqlCommand(statement, connection);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            names.Add(reader.GetInt32(0), reader.GetString(1));
        return names;
    }
}
