using System.Runtime.InteropServices;
using FleetTrend.Records.Aircraft;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>The assignments of airframe records.</summary>
internal static class AssignmentRows
{
    /// <summary>Assignments by record identifier, ordered by day.</summary>
    /// <param name="connection">Open.</param>
    /// <param name="recordIds">These records; null for all.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task<IReadOnlyDictionary<long, List<Assignment>>> ReadAsync(
        NpgsqlConnection connection, long[]? recordIds, CancellationToken ct)
    {
        var assignments = new Dictionary<long, List<Assignment>>();
        await using var command = new NpgsqlCommand(
            $"""
            select line.record_id, line.from_date, line.base, type_group.name
            from assignments line join type_groups type_group on type_group.id = line.type_group_id
            {(recordIds is null ? "" : "where line.record_id = any(@ids)")}
            order by line.record_id, line.from_date
            """,
            connection);
        if (recordIds is not null)
            command.Parameters.AddWithValue("ids", recordIds);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            ref var lines = ref CollectionsMarshal.GetValueRefOrAddDefault(assignments, reader.GetInt64(0), out _);
            (lines ??= []).Add(new Assignment(reader.GetFieldValue<DateOnly>(1), reader.GetString(2), reader.GetString(3)));
        }

        return assignments;
    }
}
