using FleetTrend.Store.Results;
using Npgsql;

namespace FleetTrend.Store.Retention;

/// <summary>Removes rows that nothing needs any more. Records, reports, flags, data problems, forecasts and keys stay for ever.</summary>
public sealed class OldRows(NpgsqlDataSource dataSource)
{
    private const string Mails = "delete from outbox_mails where coalesce(sent_time, given_up_time) < clock_timestamp() - @age";

    private const string ReportRequests = "delete from report_requests where done_time < clock_timestamp() - @age";

    // Only copies: what was accepted is in the records. One with a retraction stays, since whether the retraction stood alone at
    // a moment is read from it; one that was never accepted stays, since it is all there is of what was sent.
    private const string HeldRecords =
        """
        select id from held_records held
        where release_time < clock_timestamp() - @age and not exists (
            select from records retraction
            where retraction.source_id = held.source_id and retraction.source_record_id = held.source_record_id and retraction.kind = 9)
        """;

    /// <summary>Removes what is older than its limit; all of it or, after an error, nothing. Again, it removes nothing.</summary>
    public async Task<RemovedRows> RemoveAsync(RetentionLimits limits, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(limits);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var removed = new RemovedRows(
            await ResultThinning.ThinAsync(connection, limits.Headlines, ct),
            await DeleteAsync(connection, Mails, limits.Mails, ct),
            await DeleteAsync(connection, ReportRequests, limits.Answered, ct),
            await DeleteHeldAsync(connection, limits.Answered, ct));
        await transaction.CommitAsync(ct);
        return removed;
    }

    private static async Task<int> DeleteAsync(NpgsqlConnection connection, string statement, TimeSpan age, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 }; // the first run may have much to do
        command.Parameters.AddWithValue("age", age);
        return await command.ExecuteNonQueryAsync(ct);
    }

    private static async Task<int> DeleteHeldAsync(NpgsqlConnection connection, TimeSpan age, CancellationToken ct)
    {
        var ids = new List<long>();
        await using (var select = new NpgsqlCommand(HeldRecords, connection) { CommandTimeout = 0 })
        {
            select.Parameters.AddWithValue("age", age);
            await using var reader = await select.ExecuteReaderAsync(ct);
            while (await reader.ReadAsync(ct))
                ids.Add(reader.GetInt64(0));
        }

        foreach (var statement in new[] { "delete from held_codes where held_record_id = any(@ids)", "delete from held_records where id = any(@ids)" })
        {
            await using var delete = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 };
            delete.Parameters.AddWithValue("ids", ids.ToArray());
            await delete.ExecuteNonQueryAsync(ct);
        }

        return ids.Count;
    }
}
