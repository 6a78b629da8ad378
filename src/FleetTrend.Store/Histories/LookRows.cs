using FleetTrend.Records.Inspections;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>The lines of inspections. There are many and they are much alike: equal lines are one object.</summary>
internal static class LookRows
{
    /// <summary>Lines of these aircraft's inspections, by record identifier, ordered by location; of all where none are named.</summary>
    public static async Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadOfAircraftAsync(
        NpgsqlConnection connection, int[]? aircraftIds, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            aircraftIds is null
                ? "select record_id, location, state, method from location_looks"
                : """
                  select line.record_id, line.location, line.state, line.method
                  from records record join location_looks line on line.record_id = record.id
                  where record.kind = 6 and record.aircraft_id = any(@aircraft)
                  """,
            connection);
        if (aircraftIds is not null)
            command.Parameters.AddWithValue("aircraft", aircraftIds);
        return await ReadAsync(command, ct);
    }

    /// <summary>Lines of these records, by record identifier, ordered by location.</summary>
    public static async Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadAsync(
        NpgsqlConnection connection, long[] recordIds, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            "select record_id, location, state, method from location_looks where record_id = any(@ids)", connection);
        command.Parameters.AddWithValue("ids", recordIds);
        return await ReadAsync(command, ct);
    }

    private static async Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        var looks = new Dictionary<long, List<LocationLook>>();
        var seen = new Dictionary<(string, short, short), LocationLook>();
        var current = (Id: 0L, Lines: new List<LocationLook>());
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var recordId = reader.GetInt64(0);
            if (recordId != current.Id)
            {
                if (!looks.TryGetValue(recordId, out var lines))
                    looks.Add(recordId, lines = []);
                current = (recordId, lines);
            }

            var values = (reader.GetString(1), reader.GetInt16(2), reader.GetInt16(3));
            if (!seen.TryGetValue(values, out var look))
                seen.Add(values, look = new LocationLook(values.Item1, (LookState)values.Item2, (LookMethod)values.Item3));
            current.Lines.Add(look);
        }

        foreach (var lines in looks.Values)
            lines.Sort((left, right) => string.CompareOrdinal(left.Location, right.Location));
        return looks;
    }
}
