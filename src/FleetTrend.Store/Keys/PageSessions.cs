using System.Security.Cryptography;
using System.Text;
using Npgsql;

namespace FleetTrend.Store.Keys;

/// <summary>
/// Browsers that are signed in: each session is a row, so that signing out ends it on every server. Only hashes of the
/// identifiers are stored.
/// </summary>
public sealed class PageSessions(NpgsqlDataSource dataSource)
{
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz234567";
    private const int IdLength = 52; // 260 random bits

    /// <summary>Opens a session, and removes those that nobody has used for so long that they are over.</summary>
    /// <param name="keyId">The key that it is signed in with.</param>
    /// <param name="lasts">How long a session lasts after its last use.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Its identifier. Secret.</returns>
    public async Task<string> OpenAsync(string keyId, TimeSpan lasts, CancellationToken ct)
    {
        var id = RandomNumberGenerator.GetString(Alphabet, IdLength);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var batch = new NpgsqlBatch(connection)
        {
            BatchCommands =
            {
                new NpgsqlBatchCommand("delete from page_sessions where last_used_time < clock_timestamp() - $1") { Parameters = { new() { Value = lasts } } },
                new NpgsqlBatchCommand("insert into page_sessions (id_hash, key_id) values ($1, $2)")
                {
                    Parameters = { new() { Value = HashOf(id) }, new() { Value = keyId } },
                },
            },
        };
        await batch.ExecuteNonQueryAsync(ct);
        return id;
    }

    /// <summary>Whether a session is open; it is in use then, which is noted at most once a minute.</summary>
    /// <param name="id">Its identifier.</param>
    /// <param name="keyId">The key that it must be of.</param>
    /// <param name="lasts">How long a session lasts after its last use.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<bool> UseAsync(string id, string keyId, TimeSpan lasts, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            with open as (
                select id_hash, last_used_time from page_sessions
                where id_hash = $1 and key_id = $2 and last_used_time >= clock_timestamp() - $3),
            noted as (
                update page_sessions set last_used_time = clock_timestamp() from open
                where page_sessions.id_hash = open.id_hash and open.last_used_time < clock_timestamp() - interval '1 minute')
            select exists (select from open)
            """);
        command.Parameters.Add(new() { Value = HashOf(id) });
        command.Parameters.Add(new() { Value = keyId });
        command.Parameters.Add(new() { Value = lasts });
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>Ends a session for ever, on every server.</summary>
    public async Task EndAsync(string id, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("delete from page_sessions where id_hash = $1");
        command.Parameters.Add(new() { Value = HashOf(id) });
        await command.ExecuteNonQueryAsync(ct);
    }

    private static byte[] HashOf(string id) => SHA256.HashData(Encoding.ASCII.GetBytes(id));
}
