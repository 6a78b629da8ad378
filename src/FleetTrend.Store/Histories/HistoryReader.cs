using System.Data;
using System.Runtime.InteropServices;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Mapping;
using Npgsql;
using static FleetTrend.Store.Histories.RecordRows;

namespace FleetTrend.Store.Histories;

/// <summary>Reads what was known at a moment.</summary>
public sealed class HistoryReader(NpgsqlDataSource dataSource)
{
    /// <summary>
    /// Histories by registration: of each source record the highest revision accepted by <paramref name="asOf"/>, none that was
    /// taken back by then. With a moment of <see cref="Knowledge.FixAsOfAsync"/> the answer is the same for ever.
    /// An aircraft of which every airframe record was taken back counts as never registered and has no history.
    /// </summary>
    /// <param name="asOf">The moment of knowledge, included.</param>
    /// <param name="registration">One aircraft; null for all.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<AircraftHistory>> ReadAsync(DateTimeOffset asOf, string? registration, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, ct);
        var names = await ReadNamesAsync(connection, "select id, registration from aircraft", ct);
        var sources = await ReadNamesAsync(connection, "select id, name from sources", ct);
        int? only = null;
        if (registration is not null)
        {
            only = names.FirstOrDefault(pair => pair.Value == registration).Key;
            if (only == 0)
                return [];
        }

        var rows = new RecordRows(connection, asOf.ToUniversalTime(), only, sources);
        var assignments = await ReadAssignmentsAsync(connection, ct);
        var looks = await LookRows.ReadAsync(connection, only, ct);
        var airframes = await ReadAirframesAsync(rows, names, assignments, ct);
        var readings = await ReadReadingsAsync(rows, names, ct);
        var changes = await ReadMeterChangesAsync(rows, names, ct);
        var installations = await ReadInstallationsAsync(rows, names, ct);
        var removals = await ReadRemovalsAsync(rows, names, ct);
        var inspections = await ReadInspectionsAsync(rows, names, looks, ct);
        var findings = await ReadFindingsAsync(rows, names, ct);
        var actions = await ReadActionsAsync(rows, names, ct);
        var merges = await MergeRows.ReadAsync(connection, asOf, ct);
        return
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
        ];
    }

    /// <summary>Retractions known at a moment whose record never came, ordered by source and source record identifier.</summary>
    /// <param name="asOf">The moment of knowledge, included.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<Recorded<Retraction>>> ReadRetractionsAloneAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"""
            select sources.name, record.source_record_id, record.revision, record.accept_time, content.reason
            from records record
            join retractions content on content.record_id = record.id
            join sources on sources.id = record.source_id
            where record.kind = 9 and {NewestRevision.Condition} and not exists (
                select from records sent
                where sent.source_id = record.source_id and sent.source_record_id = record.source_record_id
                  and sent.kind <> 9 and sent.accept_time <= @as_of)
            """);
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

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<Airframe>>>> ReadAirframesAsync(
        RecordRows rows, Dictionary<int, string> names, Dictionary<long, List<Assignment>> assignments, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Airframe, "airframes", "content.watch_start_date, content.meter_offset_hours, content.retired_date",
            (aircraft, id, row) => new Airframe
            {
                Registration = names[aircraft],
                WatchStartDate = Day(row, 0),
                Assignments = assignments[id],
                MeterOffset = Time(row, 1),
                RetiredDate = IsNull(row, 2) ? null : Day(row, 2),
            },
            airframe => airframe.WatchStartDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<MeterReading>>>> ReadReadingsAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.MeterReading, "meter_readings", "content.reading_date, content.meter_hours",
            (aircraft, _, row) => new MeterReading(names[aircraft], Day(row, 0), Time(row, 1)),
            reading => reading.ReadingDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<MeterChange>>>> ReadMeterChangesAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.MeterChange, "meter_changes", "content.change_date, content.old_meter_hours, content.new_meter_hours",
            (aircraft, _, row) => new MeterChange(names[aircraft], Day(row, 0), Time(row, 1), Time(row, 2)),
            change => change.ChangeDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<Installation>>>> ReadInstallationsAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Installation, "installations",
            "content.location, content.installation_date, content.time_in_service_hours, content.part_hours, content.serial_number, content.part_number",
            (aircraft, _, row) => new Installation
            {
                Registration = names[aircraft],
                Location = row.GetString(FirstContentColumn),
                InstallationDate = Day(row, 1),
                TimeInService = Time(row, 2),
                PartHours = IsNull(row, 3) ? null : Time(row, 3),
                SerialNumber = Text(row, 4),
                PartNumber = Text(row, 5),
            },
            installation => installation.InstallationDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<Removal>>>> ReadRemovalsAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Removal, "removals",
            "content.location, content.removal_date, content.time_in_service_hours, content.reason, content.examined_good, content.serial_number",
            (aircraft, _, row) => new Removal
            {
                Registration = names[aircraft],
                Location = row.GetString(FirstContentColumn),
                RemovalDate = Day(row, 1),
                TimeInService = Time(row, 2),
                Reason = (RemovalReason)row.GetInt16(FirstContentColumn + 3),
                ExaminedGood = row.GetBoolean(FirstContentColumn + 4),
                SerialNumber = Text(row, 5),
            },
            removal => removal.RemovalDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<Inspection>>>> ReadInspectionsAsync(
        RecordRows rows, Dictionary<int, string> names, IReadOnlyDictionary<long, List<LocationLook>> looks, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Inspection, "inspections", "content.inspection_date, content.time_in_service_hours, content.occasion",
            (aircraft, id, row) => new Inspection
            {
                Registration = names[aircraft],
                InspectionDate = Day(row, 0),
                TimeInService = Time(row, 1),
                Occasion = (Occasion)row.GetInt16(FirstContentColumn + 2),
                Looks = looks.TryGetValue(id, out var lines) ? lines : [],
            },
            inspection => inspection.InspectionDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<Finding>>>> ReadFindingsAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Finding, "findings",
            "content.location, content.found_date, content.time_in_service_hours, content.condition, content.grade, content.size_mm, "
            + "content.trace_colour, content.method, content.same_event_as, content.note",
            (aircraft, _, row) => new Finding
            {
                Registration = names[aircraft],
                Location = row.GetString(FirstContentColumn),
                FoundDate = Day(row, 1),
                TimeInService = Time(row, 2),
                Condition = (Condition)row.GetInt16(FirstContentColumn + 3),
                Grade = (FindingGrade)row.GetInt16(FirstContentColumn + 4),
                SizeMillimetres = IsNull(row, 5) ? null : row.GetDouble(FirstContentColumn + 5),
                TraceColour = (TraceColour)row.GetInt16(FirstContentColumn + 6),
                Method = (LookMethod)row.GetInt16(FirstContentColumn + 7),
                SameEventAs = Text(row, 8),
                Note = Text(row, 9),
            },
            finding => finding.FoundDate, ct);

    private static Task<IReadOnlyDictionary<int, IReadOnlyList<Recorded<CorrectiveAction>>>> ReadActionsAsync(
        RecordRows rows, Dictionary<int, string> names, CancellationToken ct) =>
        rows.ReadAsync(
            RecordKind.Action, "actions",
            "content.location, content.action_date, content.time_in_service_hours, content.kind, content.part_hours, content.note",
            (aircraft, _, row) => new CorrectiveAction
            {
                Registration = names[aircraft],
                Location = row.GetString(FirstContentColumn),
                ActionDate = Day(row, 1),
                TimeInService = Time(row, 2),
                Kind = (ActionKind)row.GetInt16(FirstContentColumn + 3),
                PartHours = IsNull(row, 4) ? null : Time(row, 4),
                Note = Text(row, 5),
            },
            action => action.ActionDate, ct);

    private static async Task<Dictionary<long, List<Assignment>>> ReadAssignmentsAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        var assignments = new Dictionary<long, List<Assignment>>();
        await using var command = new NpgsqlCommand(
            """
            select line.record_id, line.from_date, line.base, type_group.name
            from assignments line join type_groups type_group on type_group.id = line.type_group_id
            order by line.record_id, line.from_date
            """,
            connection);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            ref var lines = ref CollectionsMarshal.GetValueRefOrAddDefault(assignments, reader.GetInt64(0), out _);
            (lines ??= []).Add(new Assignment(reader.GetFieldValue<DateOnly>(1), reader.GetString(2), reader.GetString(3)));
        }

        return assignments;
    }

    private static async Task<Dictionary<int, string>> ReadNamesAsync(NpgsqlConnection connection, string statement, CancellationToken ct)
    {
        var names = new Dictionary<int, string>();
        await using var command = new NpgsqlCommand(statement, connection);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            names.Add(reader.GetInt32(0), reader.GetString(1));
        return names;
    }

    private static bool IsNull(NpgsqlDataReader row, int column) => row.IsDBNull(FirstContentColumn + column);

    private static string? Text(NpgsqlDataReader row, int column) => IsNull(row, column) ? null : row.GetString(FirstContentColumn + column);

    private static DateOnly Day(NpgsqlDataReader row, int column) => row.GetFieldValue<DateOnly>(FirstContentColumn + column);

    private static Hours Time(NpgsqlDataReader row, int column) => Hours.FromTenths((long)(row.GetDecimal(FirstContentColumn + column) * 10));
}
