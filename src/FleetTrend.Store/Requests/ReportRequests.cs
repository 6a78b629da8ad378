using Npgsql;

namespace FleetTrend.Store.Requests;

/// <summary>Reports asked for outside the schedule. A period has one report per base: where they are there already a request is answered
/// with them at once, and nothing is made or mailed again.</summary>
public sealed class ReportRequests(NpgsqlDataSource dataSource)
{
    private const int MaxFailureLength = 500;

    private static readonly string ReadOne = WithReports("select * from report_requests where request_id = @id");

    private static readonly string ReadPage = WithReports(
        """
        select * from report_requests
        where @after is null
           or (request_time, request_id) < (select request_time, request_id from report_requests where request_id = @after)
        order by request_time desc, request_id desc
        limit @limit
        """);

    /// <summary>Asks for the reports of a period; the same identifier again changes nothing.</summary>
    /// <param name="requestId">The caller's identifier.</param>
    /// <param name="periodStart">First day of the period.</param>
    /// <param name="periodEnd">Last day of the period.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The request as it stands; one that came first under the identifier keeps its period.</returns>
    public async Task<StoredReportRequest> AddAsync(
        string requestId, DateOnly periodStart, DateOnly periodEnd, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using (var insert = new NpgsqlCommand(
            """
            insert into report_requests (request_id, period_start_date, period_end_date, done_time)
            select @id, @start, @end, (
                select clock_timestamp() from reports where base = '*' and type_group is null and period_start_date = @start and period_end_date = @end)
            on conflict (request_id) do nothing
            """,
            connection,
            transaction))
        {
            insert.Parameters.AddWithValue("id", requestId);
            insert.Parameters.AddWithValue("start", periodStart);
            insert.Parameters.AddWithValue("end", periodEnd);
            await insert.ExecuteNonQueryAsync(ct);
        }

        StoredReportRequest request;
        await using (var read = new NpgsqlCommand(ReadOne, connection, transaction))
        {
            read.Parameters.AddWithValue("id", requestId);
            request = (await ReadAsync(read, ct))[0];
        }

        if (write)
            await transaction.CommitAsync(ct);
        return request;
    }

    /// <summary>The request of that identifier, or null.</summary>
    public async Task<StoredReportRequest?> FindAsync(string requestId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(ReadOne);
        command.Parameters.AddWithValue("id", requestId);
        return (await ReadAsync(command, ct)).FirstOrDefault();
    }

    /// <summary>Requests, newest first.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredReportRequest>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(ReadPage);
        command.Parameters.Add(new NpgsqlParameter("after", NpgsqlTypes.NpgsqlDbType.Text) { Value = (object?)PageToken.ReadKey(pageToken) ?? DBNull.Value });
        command.Parameters.AddWithValue("limit", pageSize + 1);
        return PageToken.Cut(await ReadAsync(command, ct), pageSize, request => PageToken.Write(request.RequestId));
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
            returning request_id, period_start_date, period_end_date
            """);
        command.Parameters.AddWithValue("lease", lease);
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct)
            ? new TakenReportRequest(reader.GetString(0), reader.GetFieldValue<DateOnly>(1), reader.GetFieldValue<DateOnly>(2))
            : null;
    }

    /// <summary>The reports are saved: the request is answered for ever.</summary>
    public async Task DoneAsync(string requestId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            update report_requests set done_time = clock_timestamp(), attempt_count = attempt_count + 1, failure = null
            where request_id = @id and done_time is null
            """);
        command.Parameters.AddWithValue("id", requestId);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>An attempt failed. The request waits for the next one, or, after the last, has failed.</summary>
    /// <param name="requestId">The request.</param>
    /// <param name="failure">Why, in words; cut to 500 characters.</param>
    /// <param name="pause">How long it waits for the next attempt.</param>
    /// <param name="mostAttempts">After so many it has failed.</param>
    /// <param name="ct">Cancels.</param>
    public async Task FailedAsync(string requestId, string failure, TimeSpan pause, int mostAttempts, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(failure);
        await using var command = dataSource.CreateCommand(
            """
            update report_requests
            set attempt_count = attempt_count + 1, failure = @failure, lease_end_time = clock_timestamp() + @pause,
                done_time = case when attempt_count + 1 >= @most then clock_timestamp() end
            where request_id = @id and done_time is null
            """);
        command.Parameters.AddWithValue("id", requestId);
        command.Parameters.AddWithValue("failure", failure.Length > MaxFailureLength ? failure[..MaxFailureLength] : failure);
        command.Parameters.AddWithValue("pause", pause);
        command.Parameters.AddWithValue("most", mostAttempts);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Requests with the reports of their period, that of the whole fleet last: it is the last to be made.</summary>
    private static string WithReports(string requests) =>
        $"""
        select request.request_id, request.request_time, request.period_start_date, request.period_end_date, request.lease_end_time,
               request.done_time, request.attempt_count, request.failure, report.id, report.base, report.as_of
        from ({requests}) request
        left join reports report
            on report.period_start_date = request.period_start_date and report.period_end_date = request.period_end_date
            and report.type_group is null
        order by request.request_time desc, request.request_id desc, report.base = '*', report.base
        """;

    private static async Task<List<StoredReportRequest>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        var requests = new List<StoredReportRequest>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            if (requests.Count == 0 || requests[^1].RequestId != reader.GetString(0))
                requests.Add(await RequestAsync(reader, ct));
            if (!await reader.IsDBNullAsync(8, ct))
            {
                var report = new RequestedReport(reader.GetInt64(8), reader.GetString(9), reader.GetFieldValue<DateTimeOffset>(10));
                requests[^1] = requests[^1] with { Reports = [.. requests[^1].Reports, report] };
            }
        }

        return requests;
    }

    private static async Task<StoredReportRequest> RequestAsync(NpgsqlDataReader reader, CancellationToken ct)
    {
        var isTaken = !await reader.IsDBNullAsync(4, ct);
        DateTimeOffset? end = await reader.IsDBNullAsync(5, ct) ? null : reader.GetFieldValue<DateTimeOffset>(5);
        var failure = await reader.IsDBNullAsync(7, ct) ? null : reader.GetString(7);
        return new StoredReportRequest
        {
            RequestId = reader.GetString(0),
            RequestTime = reader.GetFieldValue<DateTimeOffset>(1),
            PeriodStart = reader.GetFieldValue<DateOnly>(2),
            PeriodEnd = reader.GetFieldValue<DateOnly>(3),
            State = (end, failure) switch
            {
                (null, _) => isTaken ? ReportRequestState.Running : ReportRequestState.Queued,
                (_, null) => ReportRequestState.Done,
                _ => ReportRequestState.Failed,
            },
            EndTime = end,
            AttemptCount = reader.GetInt32(6),
            Failure = failure,
        };
    }
}
