using Npgsql;

namespace FleetTrend.Store;

/// <summary>Lets one process at a time do a thing. A killed process lets go at once, since its connection ends with it.</summary>
public sealed class JobLock(NpgsqlDataSource dataSource)
{
    /// <summary>Enters, after whoever is in has left.</summary>
    /// <param name="name">What is done.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>What to dispose on leaving.</returns>
    public async Task<IAsyncDisposable> EnterAsync(string name, CancellationToken ct) =>
        (await EnterAsync("select true from pg_advisory_lock($1, hashtext($2))", name, ct))!;

    /// <summary>Enters if nobody else is in.</summary>
    /// <param name="name">What is done.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>What to dispose on leaving, or null where somebody else is in.</returns>
    public Task<IAsyncDisposable?> TryEnterAsync(string name, CancellationToken ct) =>
        EnterAsync("select pg_try_advisory_lock($1, hashtext($2))", name, ct);

    private async Task<IAsyncDisposable?> EnterAsync(string statement, string name, CancellationToken ct)
    {
        var connection = await dataSource.OpenConnectionAsync(ct);
        try
        {
            await using var command = new NpgsqlCommand(statement, connection)
            {
                Parameters = { new NpgsqlParameter { Value = AdvisoryLock.Job }, new NpgsqlParameter { Value = name } },
            };
            if ((bool)(await command.ExecuteScalarAsync(ct))!)
            {
                return new Held(connection, name);
            }
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }

        await connection.DisposeAsync();
        return null;
    }

    private sealed class Held(NpgsqlConnection connection, string name) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await using (connection)
            {
                await using var command = new NpgsqlCommand("select pg_advisory_unlock($1, hashtext($2))", connection)
                {
                    Parameters = { new NpgsqlParameter { Value = AdvisoryLock.Job }, new NpgsqlParameter { Value = name } },
                };
                await command.ExecuteNonQueryAsync();
            }
        }
    }
}
