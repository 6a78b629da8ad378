using System.Collections.Concurrent;
using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Histories;

/// <summary>Identifiers of what records refer to. Rows of these tables are added and never changed, so what was found once holds.</summary>
internal sealed class References
{
    private readonly ConcurrentDictionary<string, int> knownSources = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, int> knownAircraft = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, int> knownTypeGroups = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> knownLocations = new(StringComparer.Ordinal);

    public int? Source(string name) => Find(knownSources, name);

    public int? Aircraft(string registration) => Find(knownAircraft, registration);

    public int? TypeGroup(string name) => Find(knownTypeGroups, name);

    public bool HasLocation(string path) => knownLocations.ContainsKey(path);

    /// <summary>Keeps aircraft that this process has registered; only once they are committed.</summary>
    public void Keep(IEnumerable<KeyValuePair<string, int>> aircraft)
    {
        foreach (var (registration, id) in aircraft)
            knownAircraft[registration] = id;
    }

    /// <summary>Looks up what is not known yet. To be called before a transaction has written anything: what it reads is kept.</summary>
    public async Task LoadAsync(NpgsqlConnection connection, IReadOnlyList<NewRecord> records, CancellationToken ct)
    {
        var sources = Missing(knownSources, records.Select(record => record.Key.Source));
        var aircraft = Missing(knownAircraft, records.Select(record => record.Names.Registration).OfType<string>());
        var typeGroups = Missing(knownTypeGroups, records.SelectMany(record => record.Names.TypeGroups));
        var locations = Missing(knownLocations, records.SelectMany(record => record.Names.Locations));
        if (sources.Length + aircraft.Length + typeGroups.Length + locations.Length == 0)
            return;

        await using var batch = new NpgsqlBatch(connection);
        batch.BatchCommands.Add(Lookup("select name, id from sources where name = any($1)", sources));
        batch.BatchCommands.Add(Lookup("select registration, id from aircraft where registration = any($1)", aircraft));
        batch.BatchCommands.Add(Lookup("select name, id from type_groups where name = any($1)", typeGroups));
        batch.BatchCommands.Add(Lookup("select path from locations where path = any($1)", locations));
        await using var reader = await batch.ExecuteReaderAsync(ct);
        foreach (var known in new[] { knownSources, knownAircraft, knownTypeGroups })
        {
            while (await reader.ReadAsync(ct))
                known[reader.GetString(0)] = reader.GetInt32(1);
            await reader.NextResultAsync(ct);
        }

        while (await reader.ReadAsync(ct))
            knownLocations[reader.GetString(0)] = true;
    }

    private static int? Find(ConcurrentDictionary<string, int> known, string name) =>
        known.TryGetValue(name, out var id) ? id : null;

    private static string[] Missing<T>(ConcurrentDictionary<string, T> known, IEnumerable<string> names) =>
        [.. names.Where(name => !known.ContainsKey(name)).Distinct(StringComparer.Ordinal)];

    private static NpgsqlBatchCommand Lookup(string statement, string[] names) => new(statement)
    {
        Parameters = { new NpgsqlParameter { Value = names, NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Text } },
    };
}
