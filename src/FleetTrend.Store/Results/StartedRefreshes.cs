using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Results;

/// <summary>Refreshes that have started and are not published yet: a row per type group, with its set once there is one.</summary>
public sealed class StartedRefreshes(NpgsqlDataSource dataSource)
{
    /// <summary>Starts one.</summary>
    /// <param name="asOf">Its moment.</param>
    /// <param name="typeGroups">The type groups; those where nothing changed with the set that holds.</param>
    /// <param name="isHandedOut">Whether the caller computes it himself, and starts no jobs.</param>
    /// <param name="ct">Cancels.</param>
    public async Task StartAsync(
        DateTimeOffset asOf, IReadOnlyList<(string TypeGroup, long? SetId)> typeGroups, bool isHandedOut, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "insert into started_refreshes (as_of, type_group, set_id, is_handed_out) "
            + "select @as_of, type_group, set_id, @handed_out from unnest(@groups, @sets) as g (type_group, set_id)");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        command.Parameters.AddWithValue("groups", typeGroups.Select(g => g.TypeGroup).ToArray());
        command.Parameters.AddWithValue("sets", NpgsqlDbType.Array | NpgsqlDbType.Bigint, typeGroups.Select(g => g.SetId).ToArray());
        command.Parameters.AddWithValue("handed_out", isHandedOut);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Notes that every type group that is missing has its job.</summary>
    public async Task HandedOutAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("update started_refreshes set is_handed_out = true where as_of = @as_of");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Those whose jobs are not all handed out, oldest first: whoever started them is about to, or was killed.</summary>
    /// <param name="patience">How long after its moment one may take.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<DateTimeOffset>> NotHandedOutAsync(TimeSpan patience, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "select distinct as_of from started_refreshes where not is_handed_out and as_of > clock_timestamp() - @patience order by as_of");
        command.Parameters.AddWithValue("patience", patience);
        var moments = new List<DateTimeOffset>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            moments.Add(reader.GetFieldValue<DateTimeOffset>(0));
        return moments;
    }

    /// <summary>Notes the set of a type group, and says how far the refresh is then. Null where it was published or given up meanwhile.</summary>
    public async Task<StartedRefresh?> DoneAsync(DateTimeOffset asOf, string typeGroup, long setId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("update started_refreshes set set_id = @set where as_of = @as_of and type_group = @group");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        command.Parameters.AddWithValue("group", typeGroup);
        command.Parameters.AddWithValue("set", setId);
        await command.ExecuteNonQueryAsync(ct);
        return await ReadAsync(asOf, ct);
    }

    /// <summary>How far it is; null where it was published or given up.</summary>
    public async Task<StartedRefresh?> ReadAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("select type_group, set_id from started_refreshes where as_of = @as_of order by type_group");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        var (missing, sets, any) = (new List<string>(), new List<long>(), false);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            any = true;
            if (await reader.IsDBNullAsync(1, ct))
                missing.Add(reader.GetString(0));
            else
                sets.Add(reader.GetInt64(1));
        }

        return any ? new StartedRefresh(missing, sets) : null;
    }

    /// <summary>Whether one is under way. One that ended without being published, with its process, is given up after a time.</summary>
    /// <param name="patience">How long after its moment one may take.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<bool> AnyAsync(TimeSpan patience, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("select exists (select from started_refreshes where as_of > clock_timestamp() - @patience)");
        command.Parameters.AddWithValue("patience", patience);
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>Ends one, published or given up, and forgets those that ended with their processes.</summary>
    public async Task EndAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("delete from started_refreshes where as_of = @as_of or as_of < @as_of - interval '1 day'");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        await command.ExecuteNonQueryAsync(ct);
    }
}
