using Npgsql;

namespace FleetTrend.Store.Outbox;

/// <summary>Mails that are owed. A mail is sent at least once; its Message-ID is the same each time.</summary>
public sealed class OutboxStore(NpgsqlDataSource dataSource)
{
    /// <summary>Takes mails that are due, oldest first. They belong to the caller until the lease ends; then another process
    /// may take them, so that a killed sender's mails go out.</summary>
    /// <param name="max">Most to take.</param>
    /// <param name="lease">Longer than an attempt to send takes.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<DueMail>> TakeDueAsync(int max, TimeSpan lease, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            update outbox_mails mail
            set attempt_count = mail.attempt_count + 1, next_attempt_time = clock_timestamp() + @lease
            from (
                select id from outbox_mails
                where sent_time is null and given_up_time is null and next_attempt_time <= clock_timestamp()
                order by next_attempt_time, id
                limit @max
                for update skip locked) due
            where mail.id = due.id
            returning mail.id, mail.report_id, mail.recipient, mail.message_id, mail.attempt_count, mail.owed_time
            """);
        command.Parameters.AddWithValue("lease", lease);
        command.Parameters.AddWithValue("max", max);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var mails = new List<DueMail>();
        while (await reader.ReadAsync(ct))
        {
            mails.Add(new DueMail(
                reader.GetInt64(0), reader.GetInt64(1), reader.GetString(2), reader.GetString(3), reader.GetInt32(4), reader.GetFieldValue<DateTimeOffset>(5)));
        }

        return mails;
    }

    /// <summary>The server has taken the mail; it is never due again.</summary>
    public async Task MarkSentAsync(long mailId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "update outbox_mails set sent_time = clock_timestamp(), given_up_time = null, last_error = null where id = @id and sent_time is null");
        command.Parameters.AddWithValue("id", mailId);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>The attempt failed; the mail is due again at <paramref name="nextAttemptTime"/>. Ignored where the lease has
    /// ended and another process has taken the mail since.</summary>
    public async Task MarkFailedAsync(
        long mailId, int attempt, string error, DateTimeOffset nextAttemptTime, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            update outbox_mails set next_attempt_time = @next, last_error = @error
            where id = @id and attempt_count = @attempt and sent_time is null
            """);
        command.Parameters.AddWithValue("id", mailId);
        command.Parameters.AddWithValue("attempt", attempt);
        command.Parameters.AddWithValue("error", error.Replace('\0', ' '));
        command.Parameters.AddWithValue("next", nextAttemptTime.ToUniversalTime());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>The mail is not tried any more until somebody asks. Ignored where another process has taken it since.</summary>
    public async Task GiveUpAsync(long mailId, int attempt, string error, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            update outbox_mails set given_up_time = clock_timestamp(), last_error = @error
            where id = @id and attempt_count = @attempt and sent_time is null
            """);
        command.Parameters.AddWithValue("id", mailId);
        command.Parameters.AddWithValue("attempt", attempt);
        command.Parameters.AddWithValue("error", error.Replace('\0', ' '));
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>A mail that was given up, or that waits for its next attempt, is due now and owed from now. A sent one stays sent.</summary>
    /// <param name="mailId">The mail.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The mail as it then is, or null where there is none.</returns>
    public async Task<StoredMail?> RetryAsync(long mailId, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using (var command = new NpgsqlCommand(
            """
            update outbox_mails set given_up_time = null, owed_time = clock_timestamp(), next_attempt_time = clock_timestamp()
            where id = @id and sent_time is null
            """,
            connection))
        {
            command.Parameters.AddWithValue("id", mailId);
            await command.ExecuteNonQueryAsync(ct);
        }

        var mail = (await ReadAsync(connection, "id = @id", ("id", mailId), 1, ct)).SingleOrDefault();
        if (write)
            await transaction.CommitAsync(ct);
        return mail;
    }

    /// <summary>Mails, newest first.</summary>
    /// <param name="state">Only those; null for all.</param>
    /// <param name="pageSize">Most to return.</param>
    /// <param name="pageToken">From the page before; null or empty for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredMail>> ListAsync(MailState? state, int pageSize, string? pageToken, CancellationToken ct)
    {
        var condition = state switch
        {
            null => "true",
            MailState.Owed => "sent_time is null and given_up_time is null",
            MailState.Sent => "sent_time is not null",
            _ => "given_up_time is not null",
        };
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        var mails = await ReadAsync(connection, $"id < @before and {condition}", ("before", PageToken.ReadId(pageToken) ?? long.MaxValue), pageSize + 1, ct);
        return PageToken.Cut(mails, pageSize, mail => PageToken.Write(mail.MailId));
    }

    /// <summary>The mails of a report that are kept, newest first.</summary>
    public async Task<IReadOnlyList<StoredMail>> OfReportAsync(long reportId, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return await ReadAsync(connection, "report_id = @report", ("report", reportId), int.MaxValue, ct);
    }

    private static async Task<IReadOnlyList<StoredMail>> ReadAsync(
        NpgsqlConnection connection, string condition, (string Name, long Value) parameter, int count, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            $"""
            select id, report_id, recipient, sent_time, given_up_time, attempt_count, owed_time, last_error
            from outbox_mails where {condition} order by id desc limit @count
            """,
            connection);
        command.Parameters.AddWithValue(parameter.Name, parameter.Value);
        command.Parameters.AddWithValue("count", count);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var mails = new List<StoredMail>();
        while (await reader.ReadAsync(ct))
        {
            DateTimeOffset? sent = reader.IsDBNull(3) ? null : reader.GetFieldValue<DateTimeOffset>(3);
            DateTimeOffset? givenUp = reader.IsDBNull(4) ? null : reader.GetFieldValue<DateTimeOffset>(4);
            mails.Add(new StoredMail
            {
                MailId = reader.GetInt64(0),
                ReportId = reader.GetInt64(1),
                Recipient = reader.GetString(2),
                State = sent is not null ? MailState.Sent : givenUp is not null ? MailState.GivenUp : MailState.Owed,
                EndTime = sent ?? givenUp,
                AttemptCount = reader.GetInt32(5),
                OwedTime = reader.GetFieldValue<DateTimeOffset>(6),
                LastError = reader.IsDBNull(7) ? null : reader.GetString(7),
            });
        }

        return mails;
    }
}
