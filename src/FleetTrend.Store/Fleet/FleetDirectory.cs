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
    private IReadOnlyDictionary<string, Layout> _layouts = new Dictionary<string, Layout>(StringComparer.Ordinal);

    /// <summary>Those of the aircraft that are registered, by registration; a missing one is not, or was taken back.</summary>
    public async Task<IReadOnlyDictionary<string, KnownAircraft>> ReadAsync(
        IReadOnlyCollection<string> registrations, CancellationToken ct)
    {
        var assignments = await ReadAssignmentsAsync(registrations, ct);
        var typeGroups = assignments.Values.SelectMany(lines => lines).Select(line => line.TypeGroup).ToHashSet(StringComparer.Ordinal);
        if (!typeGroups.All(_layouts.ContainsKey))
            _layouts = await layouts.ReadByTypeGroupAsync(ct);
        var known = _layouts;

        // Aircraft of one type group share one table of locations.
        var locations = new Dictionary<string, IReadOnlyDictionary<string, Location>>(StringComparer.Ordinal);
        return assignments.ToDictionary(
            aircraft => aircraft.Key,
            aircraft =>
            {
                var groups = aircraft.Value.Select(line => line.TypeGroup).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
                var name = string.Join(' ', groups);
                if (!locations.TryGetValue(name, out var table))
                    locations.Add(name, table = Merge(groups.Select(group => known[group])));
                return new KnownAircraft(aircraft.Key, aircraft.Value, table);
            },
            StringComparer.Ordinal);
    }

    private async Task<Dictionary<string, List<Assignment>>> ReadAssignmentsAsync(
        IReadOnlyCollection<string> registrations, CancellationToken ct)
    {
        // The lateral subquery holds the planner to the index on (aircraft_id, kind): few records are of that kind, and where its
        // statistics do not know how few, it would read all.
        await using var command = dataSource.CreateCommand(
            $"""
            select distinct aircraft.registration, line.from_date, line.base, type_group.name
            from aircraft
            cross join lateral (select * from records where records.aircraft_id = aircraft.id and records.kind = 1 offset 0) record
            join assignments line on line.record_id = record.id
            join type_groups type_group on type_group.id = line.type_group_id
            where aircraft.registration = any(@registrations) and {NewestRevision.Condition}
            order by aircraft.registration, line.from_date, line.base, type_group.name
            """);
        command.Parameters.AddWithValue("registrations", registrations.ToArray());
        command.Parameters.AddWithValue("as_of", DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc)); // infinity: all that is committed
        var assignments = new Dictionary<string, List<Assignment>>(StringComparer.Ordinal);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var registration = reader.GetString(0);
            if (!assignments.TryGetValue(registration, out var lines))
                assignments.Add(registration, lines = []);
            lines.Add(new Assignment(reader.GetFieldValue<DateOnly>(1), reader.GetString(2), reader.GetString(3)));
        }

        return assignments;
    }

    private static Dictionary<string, Location> Merge(IEnumerable<Layout> layouts)
    {
        var locations = new Dictionary<string, Location>(StringComparer.Ordinal);
        foreach (var location in layouts.SelectMany(layout => layout.Locations))
            locations.TryAdd(location.Path, location);
        return locations;
    }
}
