using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Results;

/// <summary>
/// Thins out results by rule: the newest moment stays whole, and for a quarter of an hour what was newest before it, so that who pages
/// through can end; of each week the last moment keeps its headline figures, one from which a report was made before any other; the rest goes.
/// The parameters of a moment stay while a report was made from it.
/// </summary>
internal static class ResultThinning
{
    private const string Statements =
        """
        create temporary table kept_weekly on commit drop as
        select distinct on (date_trunc('week', as_of at time zone 'UTC')) as_of
        from trends
        where @age::interval is null or as_of >= clock_timestamp() - @age
        order by date_trunc('week', as_of at time zone 'UTC'), exists (select from reports where reports.as_of = trends.as_of) desc, as_of desc;

        update trends set is_whole = false
        where is_whole and as_of < (select max(as_of) from trends) - interval '15 minutes';

        update trends set set_ids = '{}', fleet_json = '{}'
        where not is_whole and cardinality(set_ids) > 0 and as_of not in (select as_of from kept_weekly);

        delete from trends
        where not is_whole and cardinality(set_ids) = 0
          and not exists (select from reports where reports.as_of = trends.as_of);

        delete from result_sets gone
        where as_of < (select max(as_of) from trends)
          and not exists (select from trends where gone.id = any(trends.set_ids))
          and not exists (select from started_refreshes where started_refreshes.set_id = gone.id or started_refreshes.as_of = gone.as_of);

        create temporary table thinned on commit drop as
        select id from result_sets thin
        where summary_json::text <> '{}'
          and as_of < (select max(as_of) from trends)
          and not exists (select from trends where is_whole and thin.id = any(trends.set_ids))
          and not exists (select from started_refreshes where started_refreshes.set_id = thin.id or started_refreshes.as_of = thin.as_of);

        delete from results where labels is null and set_id in (select id from thinned);
        update results set detail = null where set_id in (select id from thinned);
        update result_sets set summary_json = '{}' where id in (select id from thinned);
        """;

    /// <summary>Thins them out in the transaction of a connection; again, it does nothing more.</summary>
    /// <param name="connection">Open, with a transaction.</param>
    /// <param name="age">How long weekly headline figures stay; null for ever.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Rows that are gone or have lost what was not their headline.</returns>
    public static async Task<int> ThinAsync(NpgsqlConnection connection, TimeSpan? age, CancellationToken ct)
    {
        await using var alone = new NpgsqlCommand($"select pg_advisory_xact_lock({AdvisoryLock.Thinning})", connection);
        await alone.ExecuteNonQueryAsync(ct);
        await using var command = new NpgsqlCommand(Statements, connection) { CommandTimeout = 0 };
        command.Parameters.AddWithValue("age", NpgsqlDbType.Interval, (object?)age ?? DBNull.Value);
        return Math.Max(0, await command.ExecuteNonQueryAsync(ct));
    }
}
