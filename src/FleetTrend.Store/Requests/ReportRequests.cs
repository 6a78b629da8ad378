using Npgsql;

namespace FleetTrend.Store.Requests;

/// <summary>Reports asked for outside the schedule.</summary>
public sealed class ReportRequests(NpgsqlDataSource dataSource)
{
    /// <summary>Asks for a report; the same identifier again changes nothing.</summary>
    /// <returns>When it was asked for the first time (UTC).</returns>
    public async Task<DateTimeOffset> AddAsync(string requestId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            insert into report_requests (request_id) values (@id)
            on conflict (request_id) do update set request_id = excluded.request_id
            returning request_time
            """);
        command.Parameters.AddWithValue("id", requestId);
        return new DateTimeOffset((DateTime)(await command.ExecuteScalarAsync(ct))!);
    }

    /// <summary>The oldest request that waits, or null. It belongs to the caller until the lease ends or it is done;
    /// after the lease another process may take it.</summary>
    public async Task<TakenReportRequest?> TakeAsync(TimeSpan lease, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            update report_requests set lease_end_time = clock_timestamp() + @lease
            where request_id = (
                select request_id from report_requests
                where done_time is null and (lease_end_time is null or lease_end_time <= clock_timestamp())
                order by request_time, request_id
                limit 1
                for update skip locked)
            returning request_id, request_time
            """);
        command.Parameters.AddWithValue("lease", lease);
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? new TakenReportRequest(reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1)) : null;
    }

    /// <summary>The report is saved: the request is answered for ever.</summary>
    public async Task DoneAsync(string requestId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "update report_requests set done_time = clock_timestamp() where request_id = @id and done_time is null");
        command.Parameters.AddWithValue("id", requestId);
        await command.ExecuteNonQueryAsync(ct);
    }
}
