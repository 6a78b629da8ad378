using Npgsql;

namespace FleetTrend.Store.Results;

/// <summary>Reads how fresh results are.</summary>
public sealed class FreshnessReader(NpgsqlDataSource dataSource)
{
    /// <summary>How fresh they are now.</summary>
    public async Task<ResultFreshness> ReadAsync(CancellationToken ct)
    {
        // Accept times follow identifiers but for the batches that are written at the same time: looking at the last few of them needs
        // no index of its own, which would slow every push.
        await using var command = dataSource.CreateCommand(
            """
            select (select max(as_of) from trends),
                   (select max(accept_time) from (select accept_time from records order by id desc limit 5000) newest),
                   exists (select from refresh_requests),
                   (select max(failed_time) from refresh_requests)
            """);
        await using var reader = await command.ExecuteReaderAsync(ct);
        await reader.ReadAsync(ct);
        return new ResultFreshness(await TimeAsync(reader, 0, ct), await TimeAsync(reader, 1, ct), reader.GetBoolean(2), await TimeAsync(reader, 3, ct));
    }

    private static async Task<DateTimeOffset?> TimeAsync(NpgsqlDataReader reader, int column, CancellationToken ct) =>
        await reader.IsDBNullAsync(column, ct) ? null : reader.GetFieldValue<DateTimeOffset>(column);
}
