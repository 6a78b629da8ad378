using System.Runtime.InteropServices;
using FleetTrend.Records.Aircraft;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>The assignments of airframe records.</summary>
internal static class AssignmentRows
{
    private const string Lines =
        """
        select line.record_id, line.from_date, line.base, type_group.name
        from assignments line join type_groups type_group on type_group.id = line.type_group_id
        """;

    /// <summary>Assignments of these records, by record identifier, ordered by day.</summary>
    public static Task<IReadOnlyDictionary<long, List<Assignment>>> ReadAsync(NpgsqlConnection connection, long[] recordIds, CancellationToken ct) =>
        ReadAsync(new NpgsqlCommand($"{Lines} where line.record_id = any(@ids) order by 1, 2", connection)
        {
            Parameters = { new NpgsqlParameter("ids", recordIds) },
        }, ct);

    /// <summary>Assignments of these aircraft, by record identifier, ordered by day; of all where none are named.</summary>
    public static Task<IReadOnlyDictionary<long, List<Assignment>>> ReadOfAircraftAsync(
        NpgsqlConnection connection, int[]? aircraftIds, CancellationToken ct) =>
        aircraftIds is null
            ? ReadAsync(new NpgsqlCommand($"{Lines} order by 1, 2", connection), ct)
            : ReadAsync(new NpgsqlCommand(
                $"{Lines} join records record on record.id = line.record_id where record.aircraft_id = any(@aircraft) order by 1, 2", connection)
            {
                Parameters = { new NpgsqlParameter("aircraft", aircraftIds) },
            }, ct);

    private static async Task<IReadOnlyDictionary<long, List<Assignment>>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        await using (command)
        {
            var assignments = new Dictionary<long, List<Assignment>>();
            await using var reader = await command.ExecuteReaderAsync(ct);
            while (await reader.ReadAsync(ct))
            {
                ref var lines = ref CollectionsMarshal.GetValueRefOrAddDefault(assignments, reader.GetInt64(0), out _);
                (lines ??= []).Add(new Assignment(reader.GetFieldValue<DateOnly>(1), reader.GetString(2), reader.GetString(3)));
            }

            return assignments;
        }
    }
}
