using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Layouts;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Layouts;
using Npgsql;

namespace FleetTrend.Store.Fleet;

/// <summary>What is known now of registered aircraft.</summary>
public sealed class FleetDirectory(NpgsqlDataSource dataSource, LayoutStore layouts)
{
    // Layouts and type groups are added and never changed: what was read once is right, though it may lack a new one.
    private IReadOnlyDictionary<string, Layout> layoutsByTypeGroup = new Dictionary<string, Layout>(StringComparer.Ordinal);

    /// <summary>Those of the aircraft that are registered, by registration; a missing one is not, or was taken back.</summary>
    public async Task<IReadOnlyDictionary<string, KnownAircraft>> ReadAsync(
        IReadOnlyCollection<string> registrations, CancellationToken ct)
    {
        var lines = await ReadAssignmentsAsync(registrations, ct);
        if (!lines.All(line => layoutsByTypeGroup.ContainsKey(line.Assignment.TypeGroup)))
            layoutsByTypeGroup = await layouts.ReadByTypeGroupAsync(ct);
        var known = layoutsByTypeGroup;

        // Aircraft of one type group share one table of locations.
        var tables = new Dictionary<string, IReadOnlyDictionary<string, Location>>(StringComparer.Ordinal);
        return lines.GroupBy(line => line.Registration, StringComparer.Ordinal)
            .Where(aircraft => aircraft.Any(line => line.Holds))
            .ToDictionary(
                aircraft => aircraft.Key,
                aircraft =>
                {
                    List<Assignment> holding = [.. aircraft.Where(line => line.Holds).Select(line => line.Assignment)];
                    return new KnownAircraft(aircraft.Key, holding, Locations(holding), Locations(aircraft.Select(line => line.Assignment)));
                },
                StringComparer.Ordinal);

        IReadOnlyDictionary<string, Location> Locations(IEnumerable<Assignment> assignments)
        {
            var groups = assignments.Select(line => line.TypeGroup).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
            var name = string.Join(' ', groups);
            if (!tables.TryGetValue(name, out var table))
                tables.Add(name, table = Merge(groups.Select(group => known[group])));
            return table;
        }
    }

    /// <summary>Every base that the newest records of aircraft name.</summary>
    /// <param name="without">Records that do not count: source and identifier.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<string>> ReadBasesAsync(IReadOnlyCollection<(string Source, string SourceRecordId)> without, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"""
            select distinct line.base
            from aircraft
            cross join lateral (select * from records where records.aircraft_id = aircraft.id and records.kind = 1 offset 0) record
            join sources on sources.id = record.source_id
            join assignments line on line.record_id = record.id
            where {NewestRevision.Condition}
              and not exists (select from unnest(@sources, @ids) as sent(source, id) where sent.source = sources.name and sent.id = record.source_record_id)
            order by line.base
            """);
        command.Parameters.AddWithValue("sources", without.Select(record => record.Source).ToArray());
        command.Parameters.AddWithValue("ids", without.Select(record => record.SourceRecordId).ToArray());
        command.Parameters.AddWithValue("as_of", DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc)); // infinity: all that is committed
        var bases = new List<string>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            bases.Add(reader.GetString(0));
        return bases;
    }

    /// <summary>Assignments of every revision of every airframe record, with whether the revision is the newest.</summary>
    private async Task<List<(string Registration, Assignment Assignment, bool Holds)>> ReadAssignmentsAsync(
        IReadOnlyCollection<string> registrations, CancellationToken ct)
    {
        // The lateral subquery holds the planner to the index on (aircraft_id, kind): few records are of that kind, and where its
        // statistics do not know how few, it would read all.
        await using var command = dataSource.CreateCommand(
            $"""
            select distinct aircraft.registration, line.from_date, line.base, type_group.name, {NewestRevision.Condition} as holds
            from aircraft
            cross join lateral (select * from records where records.aircraft_id = aircraft.id and records.kind = 1 offset 0) record
            join assignments line on line.record_id = record.id
            join type_groups type_group on type_group.id = line.type_group_id
            where aircraft.registration = any(@registrations)
            order by aircraft.registration, line.from_date, line.base, type_group.name
            """);
        command.Parameters.AddWithValue("registrations", registrations.ToArray());
        command.Parameters.AddWithValue("as_of", DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc)); // infinity: all that is committed
        var lines = new List<(string, Assignment, bool)>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            lines.Add((
                reader.GetString(0),
                new Assignment(reader.GetFieldValue<DateOnly>(1), reader.GetString(2), reader.GetString(3)),
                reader.GetBoolean(4)));
        }

        return lines;
    }

    private static Dictionary<string, Location> Merge(IEnumerable<Layout> layouts)
    {
        var locations = new Dictionary<string, Location>(StringComparer.Ordinal);
        foreach (var location in layouts.SelectMany(layout => layout.Locations))
            locations.TryAdd(location.Path, location);
        return locations;
    }
}
