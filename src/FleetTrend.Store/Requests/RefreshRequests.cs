using Npgsql;

namespace FleetTrend.Store.Requests;

/// <summary>Refreshes of the trends that are owed: a row per accepted batch of records, written with it, or asked for.</summary>
public sealed class RefreshRequests(NpgsqlDataSource dataSource)
{
    /// <summary>Asks for a refresh; unlike one owed for records, it is due at once.</summary>
    /// <returns>When it was asked for (UTC); a snapshot as of then or later answers it.</returns>
    public async Task<DateTimeOffset> RequestAsync(CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "insert into refresh_requests (request_time, at_once) values (clock_timestamp(), true) returning request_time");
        return new DateTimeOffset((DateTime)(await command.ExecuteScalarAsync(ct))!);
    }

    /// <summary>True where a refresh is owed and somebody asked for it, nothing new came for <paramref name="debounce"/>, or the
    /// oldest request has waited for <paramref name="maxWait"/>.</summary>
    public async Task<bool> DueAsync(TimeSpan debounce, TimeSpan maxWait, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            select coalesce(bool_or(at_once)
                         or max(request_time) <= clock_timestamp() - @debounce
                         or min(request_time) <= clock_timestamp() - @max_wait, false)
            from refresh_requests
            """);
        command.Parameters.AddWithValue("debounce", debounce);
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
}
