using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Histories;

/// <summary>Writes contents by binary COPY, a table per kind of record.</summary>
internal static class ContentCopy
{
    /// <summary>Writes the content of <paramref name="accepted"/>, each under the identifier at its index.</summary>
    public static async Task WriteAsync(
        NpgsqlConnection connection,
        IReadOnlyList<AcceptedRecord> accepted,
        long[] ids,
        Func<string, int> typeGroupId,
        CancellationToken ct)
    {
        var contents = accepted.Select((item, i) => (Id: ids[i], item.Record.Content)).ToList();
        await WriteAirframesAsync(connection, Of<Airframe>(contents), typeGroupId, ct);
        await WriteInspectionsAsync(connection, Of<Inspection>(contents), ct);
        await CopyAsync(connection, "meter_readings (record_id, reading_date, meter_hours)", Of<MeterReading>(contents),
            reading => [reading.ReadingDate, Number(reading.MeterHours)], ct);
        await CopyAsync(connection, "meter_changes (record_id, change_date, old_meter_hours, new_meter_hours)", Of<MeterChange>(contents),
            change => [change.ChangeDate, Number(change.OldMeterHours), Number(change.NewMeterHours)], ct);
        await CopyAsync(
            connection,
            "installations (record_id, location, installation_date, time_in_service_hours, part_hours, serial_number, part_number)",
            Of<Installation>(contents),
            item => [item.Location, item.InstallationDate, Number(item.TimeInService), Number(item.PartHours), item.SerialNumber, item.PartNumber],
            ct);
        await CopyAsync(
            connection,
            "removals (record_id, location, removal_date, time_in_service_hours, reason, examined_good, serial_number)",
            Of<Removal>(contents),
            item => [item.Location, item.RemovalDate, Number(item.TimeInService), (short)item.Reason, item.ExaminedGood, item.SerialNumber],
            ct);
        await CopyAsync(
            connection,
            "findings (record_id, location, found_date, time_in_service_hours, condition, grade, size_mm, trace_colour, method, same_event_as, note)",
            Of<Finding>(contents),
            item =>
            [
                item.Location, item.FoundDate, Number(item.TimeInService), (short)item.Condition, (short)item.Grade, item.SizeMillimetres,
                (short)item.TraceColour, (short)item.Method, item.SameEventAs, item.Note,
            ],
            ct);
        await CopyAsync(
            connection,
            "actions (record_id, location, action_date, time_in_service_hours, kind, part_hours, note)",
            Of<CorrectiveAction>(contents),
            item => [item.Location, item.ActionDate, Number(item.TimeInService), (short)item.Kind, Number(item.PartHours), item.Note],
            ct);
        await CopyAsync(connection, "retractions (record_id, reason)", Of<Retraction>(contents), item => [item.Reason], ct);
    }

    private static async Task WriteAirframesAsync(
        NpgsqlConnection connection, List<(long Id, Airframe Content)> airframes, Func<string, int> typeGroupId, CancellationToken ct)
    {
        await CopyAsync(connection, "airframes (record_id, watch_start_date, meter_offset_hours, retired_date)", airframes,
            airframe => [airframe.WatchStartDate, Number(airframe.MeterOffset), airframe.RetiredDate], ct);
        var assignments = airframes.SelectMany(airframe => airframe.Content.Assignments, (airframe, line) => (airframe.Id, line)).ToList();
        await CopyAsync(connection, "assignments (record_id, from_date, base, type_group_id)", assignments,
            line => [line.FromDate, line.Base, typeGroupId(line.TypeGroup)], ct);
    }

    private static async Task WriteInspectionsAsync(
        NpgsqlConnection connection, List<(long Id, Inspection Content)> inspections, CancellationToken ct)
    {
        await CopyAsync(connection, "inspections (record_id, inspection_date, time_in_service_hours, occasion)", inspections,
            item => [item.InspectionDate, Number(item.TimeInService), (short)item.Occasion], ct);
        var looks = inspections.SelectMany(inspection => inspection.Content.Looks, (inspection, look) => (inspection.Id, look)).ToList();
        await CopyAsync(connection, "location_looks (record_id, location, state, method)", looks,
            look => [look.Location, (short)look.State, (short)look.Method], ct);
    }

    private static List<(long Id, T Content)> Of<T>(IEnumerable<(long Id, object Content)> contents) =>
        [.. contents.Where(item => item.Content is T).Select(item => (item.Id, (T)item.Content))];

    private static decimal Number(Hours hours) => hours.Tenths / 10m;

    private static decimal? Number(Hours? hours) => hours is { } known ? Number(known) : null;

    private static async Task CopyAsync<T>(
        NpgsqlConnection connection, string table, List<(long Id, T Content)> rows, Func<T, object?[]> values, CancellationToken ct)
    {
        if (rows.Count == 0)
            return;
        await using var copy = await connection.BeginBinaryImportAsync($"copy {table} from stdin (format binary)", ct);
        foreach (var (id, content) in rows)
        {
            await copy.StartRowAsync(ct);
            await copy.WriteAsync(id, NpgsqlDbType.Bigint, ct);
            foreach (var value in values(content))
                await WriteAsync(copy, value, ct);
        }

        await copy.CompleteAsync(ct);
    }

    /// <summary>Binary COPY converts nothing: the type written must be the column's.</summary>
    private static Task WriteAsync(NpgsqlBinaryImporter copy, object? value, CancellationToken ct) => value switch
    {
        null => copy.WriteNullAsync(ct),
        string text => copy.WriteAsync(text, NpgsqlDbType.Text, ct),
        DateOnly day => copy.WriteAsync(day, NpgsqlDbType.Date, ct),
        decimal number => copy.WriteAsync(number, NpgsqlDbType.Numeric, ct),
        double number => copy.WriteAsync(number, NpgsqlDbType.Double, ct),
        short code => copy.WriteAsync(code, NpgsqlDbType.Smallint, ct),
        int number => copy.WriteAsync(number, NpgsqlDbType.Integer, ct),
        bool flag => copy.WriteAsync(flag, NpgsqlDbType.Boolean, ct),
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "No column has this type."),
    };
}
