using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>What is known when.</summary>
public sealed class Knowledge(NpgsqlDataSource dataSource)
{
    /// <summary>
    /// Fixes a moment of knowledge: every record with an accept time up to it is committed, and none that is accepted later will
    /// carry one. Waits for the writers that are at work and holds up new ones only for that time.
    /// </summary>
    /// <returns>The moment (UTC, microseconds); later than any fixed before.</returns>
    public async Task<DateTimeOffset> FixAsOfAsync(CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var batch = new NpgsqlBatch(connection, transaction)
        {
            BatchCommands =
            {
                new NpgsqlBatchCommand($"select pg_advisory_xact_lock({AdvisoryLock.Knowledge})"),

                // A clock that was set back must not bring back a moment that has passed.
                new NpgsqlBatchCommand(
                    """
                    insert into knowledge as known (id, last_as_of) values (1, clock_timestamp())
                    on conflict (id) do update
                    set last_as_of = greatest(excluded.last_as_of, known.last_as_of + interval '1 microsecond')
                    returning last_as_of
                    """),
            },
        };
        DateTimeOffset asOf;
        await using (var reader = await batch.ExecuteReaderAsync(ct))
        {
            await reader.NextResultAsync(ct);
            await reader.ReadAsync(ct);
            asOf = reader.GetFieldValue<DateTimeOffset>(0);
        }

        await transaction.CommitAsync(ct);
        return asOf;
    }
}
