using Npgsql;

namespace FleetTrend.Store.Fleet;

/// <summary>The names that are registered now.</summary>
public sealed class FleetNames(NpgsqlDataSource dataSource)
{
    /// <summary>Whether the name is registered.</summary>
    public async Task<bool> HasAsync(NameKind kind, string name, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand($"select exists (select from ({QueryOf(kind)}) known(name) where name = @name)");
        command.Parameters.AddWithValue("name", name);
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>All names of a kind, in order.</summary>
    public async Task<IReadOnlyList<string>> ReadAsync(NameKind kind, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand($"select distinct name from ({QueryOf(kind)}) known(name) order by name");
        var names = new List<string>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            names.Add(reader.GetString(0));
        return names;
    }

    private static string QueryOf(NameKind kind) => kind switch
    {
        NameKind.Aircraft => "select registration from aircraft",
        NameKind.HeldAircraft => "select registration from aircraft union all select registration from held_records where release_time is null",
        NameKind.TypeGroup => "select name from type_groups",
        NameKind.LocationKind => "select name from location_kinds",
        NameKind.Location => "select path from locations",
        NameKind.Base => "select base from assignments",
        NameKind.Source => "select name from sources",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of name."),
    };
}
