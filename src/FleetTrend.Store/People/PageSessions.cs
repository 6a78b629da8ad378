using Npgsql;

namespace FleetTrend.Store.People;

/// <summary>
/// Browsers that are signed in: each session is a row, so that signing out ends it on every server. It is good as long as its person may
/// sign in and has the security stamp with which it was opened: another password, or none any more, ends it. Only hashes of the
/// identifiers are stored.
/// </summary>
public sealed class PageSessions(NpgsqlDataSource dataSource)
{
    /// <summary>Opens a session, and removes those that nobody has used for so long that they are over.</summary>
    /// <param name="person">Who signs in.</param>
    /// <param name="lasts">How long a session lasts after its last use.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Its identifier. Secret.</returns>
    public async Task<string> OpenAsync(Person person, TimeSpan lasts, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(person);
        var id = SecretText.Create();
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var batch = new NpgsqlBatch(connection)
        {
            BatchCommands =
            {
                new NpgsqlBatchCommand("delete from page_sessions where last_used_time < clock_timestamp() - $1") { Parameters = { new() { Value = lasts } } },
                new NpgsqlBatchCommand("insert into page_sessions (id_hash, person_id, security_stamp) values ($1, $2, $3)")
                {
                    Parameters = { new() { Value = SecretText.HashOf(id) }, new() { Value = person.Id }, new() { Value = person.SecurityStamp! } },
                },
            },
        };
        await batch.ExecuteNonQueryAsync(ct);
        return id;
    }

    /// <summary>Whose session it is; it is in use then, which is noted at most once a minute.</summary>
    /// <param name="id">Its identifier.</param>
    /// <param name="lasts">How long a session lasts after its last use.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Null where it is not good any more.</returns>
    public async Task<SignedInPerson?> UseAsync(string id, TimeSpan lasts, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            with open as (
                select session.id_hash, session.last_used_time, person.id, person.name, person.role
                from page_sessions session join people person on person.id = session.person_id
                where session.id_hash = $1 and session.last_used_time >= clock_timestamp() - $2
                    and session.security_stamp = person.security_stamp and person.disable_time is null),
            noted as (
                update page_sessions set last_used_time = clock_timestamp() from open
                where page_sessions.id_hash = open.id_hash and open.last_used_time < clock_timestamp() - interval '1 minute')
            select id, name, role from open
            """);
        command.Parameters.Add(new() { Value = SecretText.HashOf(id) });
        command.Parameters.Add(new() { Value = lasts });
        await using var row = await command.ExecuteReaderAsync(ct);
        return await row.ReadAsync(ct) ? new SignedInPerson(row.GetInt64(0), row.GetString(1), (PersonRole)row.GetInt32(2)) : null;
    }

    /// <summary>Ends a session for ever, on every server.</summary>
    public async Task EndAsync(string id, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("delete from page_sessions where id_hash = $1");
        command.Parameters.Add(new() { Value = SecretText.HashOf(id) });
        await command.ExecuteNonQueryAsync(ct);
    }
}
