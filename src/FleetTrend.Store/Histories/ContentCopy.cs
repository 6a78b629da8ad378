using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Inspections;
using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Histories;

/// <summary>Writes contents by binary COPY, a table per kind of record, and the lines of aircraft and inspections.</summary>
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
        foreach (var kind in contents.GroupBy(item => item.Content.RecordKind))
        {
            var table = ContentTables.Get(kind.Key);
            await CopyAsync(
                connection, table.Table, table.CopyColumns, [.. kind.Select(item => (item.Id, table.WriteAny(item.Content)))], ct);
        }

        await CopyAsync(
            connection,
            "assignments",
            "from_date, base, type_group_id",
            [
                .. contents.SelectMany(
                    item => item.Content is Airframe airframe ? airframe.Assignments : [],
                    (item, line) => (item.Id, (IReadOnlyList<object?>)[line.FromDate, line.Base, typeGroupId(line.TypeGroup)])),
            ],
            ct);
        await CopyAsync(
            connection,
            "location_looks",
            "location, state, method",
            [
                .. contents.SelectMany(
                    item => item.Content is Inspection inspection ? inspection.Looks : [],
                    (item, look) => (item.Id, (IReadOnlyList<object?>)[look.Location, (short)look.State, (short)look.Method])),
            ],
            ct);
    }

    private static async Task CopyAsync(
        NpgsqlConnection connection, string table, string columns, List<(long Id, IReadOnlyList<object?> Values)> rows, CancellationToken ct)
    {
        if (rows.Count == 0)
            return;
        await using var copy = await connection.BeginBinaryImportAsync($"copy {table} (record_id, {columns}) from stdin (format binary)", ct);
        foreach (var (id, values) in rows)
        {
            await copy.StartRowAsync(ct);
            await copy.WriteAsync(id, NpgsqlDbType.Bigint, ct);
            foreach (var value in values)
                await WriteAsync(copy, value, ct);
        }

        await copy.CompleteAsync(ct);
    }

    /// <summary>Binary COPY converts nothing: the type written must be the column's.</summary>
    private static Task WriteAsync(NpgsqlBinaryImporter copy, object? value, CancellationToken ct) => value switch
    {
        null => copy.WriteNullAsync(ct),
        string text => copy.WriteAsync(text, NpgsqlDbType.Text, ct),
        string[] texts => copy.WriteAsync(texts, NpgsqlDbType.Array | NpgsqlDbType.Text, ct),
        DateOnly day => copy.WriteAsync(day, NpgsqlDbType.Date, ct),
        decimal number => copy.WriteAsync(number, NpgsqlDbType.Numeric, ct),
        double number => copy.WriteAsync(number, NpgsqlDbType.Double, ct),
        short code => copy.WriteAsync(code, NpgsqlDbType.Smallint, ct),
        int number => copy.WriteAsync(number, NpgsqlDbType.Integer, ct),
        bool flag => copy.WriteAsync(flag, NpgsqlDbType.Boolean, ct),
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "No column has this type."),
    };
}
