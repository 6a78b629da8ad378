using Npgsql;

namespace FleetTrend.Store.Requests;

/// <summary>Refreshes of the trends that are owed: a row per accepted batch of records, written with it, or asked for.</summary>
public sealed class RefreshRequests(NpgsqlDataSource dataSource)
{
    /// <summary>Asks for a refresh; unlike one owed for records, it is due at once.</summary>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<AskedRefresh> RequestAsync(bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var command = new NpgsqlCommand(
            """
            with others as (
                     select exists (select from refresh_requests where at_once) as wait,
                            exists (select from started_refreshes where as_of > clock_timestamp() - interval '5 minutes') as is_running),
                 asked as (insert into refresh_requests (request_time, at_once) values (clock_timestamp(), true) returning request_time)
            select request_time, wait, is_running from asked, others
            """,
            connection,
            transaction);
        AskedRefresh asked;
        await using (var reader = await command.ExecuteReaderAsync(ct))
        {
            await reader.ReadAsync(ct);
            asked = new AskedRefresh(
                reader.GetFieldValue<DateTimeOffset>(0),
                reader.GetBoolean(2) ? AskedRefreshState.AfterRunning : reader.GetBoolean(1) ? AskedRefreshState.Joined : AskedRefreshState.Queued);
        }

        if (write)
            await transaction.CommitAsync(ct);
        return asked;
    }

    /// <summary>
    /// True where a refresh is owed and somebody asked for it; or the last one is <paramref name="least"/> old and either nothing new came
    /// for <paramref name="debounce"/>, or the oldest request has waited for <paramref name="maxWait"/>.
    /// </summary>
    public async Task<bool> DueAsync(TimeSpan debounce, TimeSpan least, TimeSpan maxWait, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            select coalesce(bool_or(at_once)
                         or ((max(request_time) <= clock_timestamp() - @debounce or min(request_time) <= clock_timestamp() - @max_wait)
                             and coalesce((select max(as_of) from trends) <= clock_timestamp() - @least, true)), false)
            from refresh_requests
            """);
        command.Parameters.AddWithValue("debounce", debounce);
        command.Parameters.AddWithValue("least", least);
        command.Parameters.AddWithValue("max_wait", maxWait);
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>Forgets what a refresh as of that moment has answered; what came later stays owed.</summary>
    public async Task DoneAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("delete from refresh_requests where request_time <= @as_of");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Notes that an attempt failed; what was owed stays owed.</summary>
    public async Task FailedAsync(CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("update refresh_requests set failed_time = clock_timestamp()");
        await command.ExecuteNonQueryAsync(ct);
    }
}
