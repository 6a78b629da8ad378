using FleetTrend.Records.Inspections;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>
/// The lines of inspections. There are many and they are much alike: they come as one row an inspection, and what is alike is one object.
/// </summary>
internal static class LookRows
{
    /// <summary>A character for state and method together; most inspections then have one of few texts.</summary>
    private const string Lines =
        """
        cross join lateral (
            select string_agg(line.location, E'\n') as locations, string_agg(chr(48 + 8 * line.state + line.method), '') as states
            from location_looks line where line.record_id = inspected.id) told
        """;

    private const int FirstCharacter = 48;
    private const int Methods = 8;

    /// <summary>Lines of these aircraft's inspections, by record identifier, ordered by location; of all where none are named.</summary>
    public static Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadOfAircraftAsync(
        NpgsqlConnection connection, int[]? aircraftIds, CancellationToken ct) =>
        aircraftIds is null
            ? ReadAsync(new NpgsqlCommand($"select inspected.id, told.* from (select record_id as id from inspections) inspected {Lines}", connection), ct)
            : ReadAsync(
                new NpgsqlCommand(
                    $"select inspected.id, told.* from records inspected {Lines} where inspected.kind = 6 and inspected.aircraft_id = any(@aircraft)",
                    connection)
                {
                    Parameters = { new NpgsqlParameter("aircraft", aircraftIds) },
                },
                ct);

    /// <summary>Lines of these records, by record identifier, ordered by location.</summary>
    public static Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadAsync(NpgsqlConnection connection, long[] recordIds, CancellationToken ct) =>
        ReadAsync(
            new NpgsqlCommand($"select inspected.id, told.* from unnest(@ids) as inspected(id) {Lines}", connection)
            {
                Parameters = { new NpgsqlParameter("ids", recordIds) },
            },
            ct);

    private static async Task<IReadOnlyDictionary<long, List<LocationLook>>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        await using (command)
        {
            var looks = new Dictionary<long, List<LocationLook>>();
            var alike = new Dictionary<(string Locations, string States), List<LocationLook>>();
            var paths = new Dictionary<string, string[]>(StringComparer.Ordinal);
            var seen = new Dictionary<(string, char), LocationLook>();
            await using var reader = await command.ExecuteReaderAsync(ct);
            while (await reader.ReadAsync(ct))
            {
                if (await reader.IsDBNullAsync(1, ct))
                    continue; // an inspection without lines
                var told = (Locations: reader.GetString(1), States: reader.GetString(2));
                if (!paths.TryGetValue(told.Locations, out var locations))
                    paths.Add(told.Locations, locations = told.Locations.Split('\n'));
                if (!alike.TryGetValue(told, out var lines))
                    alike.Add(told, lines = [.. locations.Zip(told.States, Look).OrderBy(l => l.Location, StringComparer.Ordinal)]);
                looks.Add(reader.GetInt64(0), lines);
            }

            return looks;

            LocationLook Look(string location, char state)
            {
                if (!seen.TryGetValue((location, state), out var look))
                {
                    var (told, method) = Math.DivRem(state - FirstCharacter, Methods);
                    seen.Add((location, state), look = new LocationLook(location, (LookState)told, (LookMethod)method));
                }

                return look;
            }
        }
    }
}
