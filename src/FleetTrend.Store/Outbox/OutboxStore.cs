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
                where sent_time is null and next_attempt_time <= clock_timestamp()
                order by next_attempt_time, id
                limit @max
                for update skip locked) due
            where mail.id = due.id
            returning mail.id, mail.report_id, mail.recipient, mail.message_id, mail.attempt_count
            """);
        command.Parameters.AddWithValue("lease", lease);
        command.Parameters.AddWithValue("max", max);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var mails = new List<DueMail>();
        while (await reader.ReadAsync(ct))
            mails.Add(new DueMail(reader.GetInt64(0), reader.GetInt64(1), reader.GetString(2), reader.GetString(3), reader.GetInt32(4)));
        return mails;
    }

    /// <summary>The server has taken the mail; it is never due again.</summary>
    public async Task MarkSentAsync(long mailId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "update outbox_mails set sent_time = clock_timestamp(), last_error = null where id = @id and sent_time is null");
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
}
