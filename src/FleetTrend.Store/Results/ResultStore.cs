using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Results;

/// <summary>
/// Results as rows: a set per type group and computation, a row per analysis and subject in it. What is published names the sets that
/// make a moment, in one row: a reader sees all of a moment or nothing, and a type group where nothing changed keeps its set.
/// </summary>
public sealed class ResultStore(NpgsqlDataSource dataSource)
{
    private const string Published = "select as_of, code_version, parameters_json, set_ids, fleet_json, is_whole from trends";

    /// <summary>Writes a set of results, all of it or nothing; nobody sees it before it is published.</summary>
    /// <param name="asOf">The moment of knowledge.</param>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="summaryJson">What the fleet as a whole needs of it.</param>
    /// <param name="results">Rows, in order.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The set, or the one that another worker wrote for the same moment and type group first.</returns>
    public async Task<long> AddSetAsync(
        DateTimeOffset asOf, string typeGroup, string summaryJson, IEnumerable<NewResult> results, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(results);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var add = new NpgsqlCommand(
            """
            insert into result_sets (as_of, type_group, summary_json) values (@as_of, @type_group, @summary::json)
            on conflict (as_of, type_group) do update set type_group = excluded.type_group -- so that one written beside this is returned too
            returning id, xmax = 0
            """,
            connection);
        add.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        add.Parameters.AddWithValue("type_group", typeGroup);
        add.Parameters.AddWithValue("summary", summaryJson);
        long setId;
        await using (var reader = await add.ExecuteReaderAsync(ct))
        {
            await reader.ReadAsync(ct);
            setId = reader.GetInt64(0);
            if (!reader.GetBoolean(1))
                return setId;
        }

        await using (var copy = await connection.BeginBinaryImportAsync(
            """
            copy results (set_id, analysis, ordinal, registration, location, kind, base, item_count, labels, headline_values, lowers, uppers, event_counts, detail)
            from stdin (format binary)
            """,
            ct))
        {
            var ordinal = 0;
            foreach (var result in results)
                await WriteAsync(copy, setId, ++ordinal, result, ct);
            await copy.CompleteAsync(ct);
        }

        await transaction.CommitAsync(ct);
        return setId;
    }

    /// <summary>Publishes a moment. Where it is published already that stays, and the answer is false.</summary>
    public async Task<bool> PublishAsync(PublishedTrends trends, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(trends);
        await using var command = dataSource.CreateCommand(
            """
            insert into trends (as_of, code_version, parameters_json, set_ids, fleet_json)
            values (@as_of, @code_version, @parameters::json, @sets, @fleet::json)
            on conflict (as_of) do nothing
            """);
        command.Parameters.AddWithValue("as_of", trends.AsOf.ToUniversalTime());
        command.Parameters.AddWithValue("code_version", trends.CodeVersion);
        command.Parameters.AddWithValue("parameters", trends.ParametersJson);
        command.Parameters.AddWithValue("sets", trends.SetIds.ToArray());
        command.Parameters.AddWithValue("fleet", trends.FleetJson);
        return await command.ExecuteNonQueryAsync(ct) == 1;
    }

    /// <summary>Lets go of results that newer ones have replaced, as <see cref="ResultThinning"/> says; again, it does nothing more.</summary>
    public async Task ThinAsync(CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await ResultThinning.ThinAsync(connection, age: null, ct);
        await transaction.CommitAsync(ct);
    }

    /// <summary>The latest that is published, or null where nothing is.</summary>
    public Task<PublishedTrends?> LatestAsync(CancellationToken ct) => FirstAsync($"{Published} order by as_of desc limit 1", null, ct);

    /// <summary>What is published of exactly that moment, or null.</summary>
    public Task<PublishedTrends?> AtAsync(DateTimeOffset asOf, CancellationToken ct) => FirstAsync($"{Published} where as_of = @as_of", asOf, ct);

    /// <summary>Sets by identifier, in the order of their type groups.</summary>
    public async Task<IReadOnlyList<ResultSet>> ReadSetsAsync(IReadOnlyCollection<long> setIds, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "select id, type_group, summary_json from result_sets where id = any(@ids) order by type_group");
        command.Parameters.AddWithValue("ids", setIds.ToArray());
        var sets = new List<ResultSet>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            sets.Add(new ResultSet(reader.GetInt64(0), reader.GetString(1), reader.GetString(2)));
        return sets;
    }

    /// <summary>Rows of an analysis, by type group and then in the order of the analysis.</summary>
    /// <param name="setIds">The sets that make a moment.</param>
    /// <param name="analysis">Name of the analysis.</param>
    /// <param name="filter">Which rows.</param>
    /// <param name="after">Answers to skip; the row in which the next one stands is the first.</param>
    /// <param name="count">Answers wanted; rows may hold a few more.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<StoredResult>> ReadAsync(
        IReadOnlyCollection<long> setIds, string analysis, ResultFilter filter, long after, int count, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            with asked as (
                select row.set_id, row.analysis, row.ordinal, in_set.type_group, row.item_count,
                       sum(row.item_count) over (order by in_set.type_group, row.ordinal) - row.item_count as first
                from results row join result_sets in_set on in_set.id = row.set_id
                where row.set_id = any(@sets) and row.analysis = @analysis
                  and (@type_group::text is null or in_set.type_group = @type_group)
                  and (@registration::text is null or row.registration = @registration)
                  and (@location::text is null or row.location = @location)
                  and (@kind::text is null or row.kind = @kind))
            select asked.set_id, asked.first::bigint, row.detail
            from asked join results row using (set_id, analysis, ordinal)
            where asked.first + asked.item_count > @after and asked.first < @after + @count
            order by asked.first, asked.type_group, asked.ordinal
            """);
        command.Parameters.AddWithValue("sets", setIds.ToArray());
        command.Parameters.AddWithValue("analysis", analysis);
        command.Parameters.AddWithValue("type_group", NpgsqlDbType.Text, (object?)filter.TypeGroup ?? DBNull.Value);
        command.Parameters.AddWithValue("registration", NpgsqlDbType.Text, (object?)filter.Registration ?? DBNull.Value);
        command.Parameters.AddWithValue("location", NpgsqlDbType.Text, (object?)filter.Location ?? DBNull.Value);
        command.Parameters.AddWithValue("kind", NpgsqlDbType.Text, (object?)filter.Kind ?? DBNull.Value);
        command.Parameters.AddWithValue("after", after);
        command.Parameters.AddWithValue("count", (long)count);
        var rows = new List<StoredResult>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            rows.Add(new StoredResult(reader.GetInt64(0), reader.GetInt64(1), reader.GetString(2)));
        return rows;
    }

    /// <summary>Details of the rows of an analysis whose first headline figure is greatest, the greatest first.</summary>
    public async Task<IReadOnlyList<string>> ReadGreatestAsync(IReadOnlyCollection<long> setIds, string analysis, int count, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            with greatest as (
                select set_id, analysis, ordinal from results
                where set_id = any(@sets) and analysis = @analysis
                order by headline_values[1] desc nulls last, registration, location, kind, base
                limit @count)
            select row.detail from greatest join results row using (set_id, analysis, ordinal) order by row.headline_values[1] desc nulls last
            """);
        command.Parameters.AddWithValue("sets", setIds.ToArray());
        command.Parameters.AddWithValue("analysis", analysis);
        command.Parameters.AddWithValue("count", count);
        var details = new List<string>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            details.Add(reader.GetString(0));
        return details;
    }

    private async Task<PublishedTrends?> FirstAsync(string statement, DateTimeOffset? asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(statement);
        if (asOf is { } moment)
            command.Parameters.AddWithValue("as_of", moment.ToUniversalTime());
        await using var reader = await command.ExecuteReaderAsync(ct);
        return !await reader.ReadAsync(ct) ? null : new PublishedTrends
        {
            AsOf = reader.GetFieldValue<DateTimeOffset>(0),
            CodeVersion = reader.GetString(1),
            ParametersJson = reader.GetString(2),
            SetIds = reader.GetFieldValue<long[]>(3),
            FleetJson = reader.GetString(4),
            IsWhole = reader.GetBoolean(5),
        };
    }

    private static async Task WriteAsync(NpgsqlBinaryImporter copy, long setId, int ordinal, NewResult result, CancellationToken ct)
    {
        await copy.StartRowAsync(ct);
        await copy.WriteAsync(setId, NpgsqlDbType.Bigint, ct);
        await copy.WriteAsync(result.Analysis, NpgsqlDbType.Text, ct);
        await copy.WriteAsync(ordinal, NpgsqlDbType.Integer, ct);
        await TextAsync(result.Registration);
        await TextAsync(result.Location);
        await TextAsync(result.Kind);
        await TextAsync(result.Base);
        await copy.WriteAsync(result.Count, NpgsqlDbType.Integer, ct);
        if (result.Headlines.Count == 0)
        {
            for (var column = 0; column < 5; column++)
                await copy.WriteNullAsync(ct);
        }
        else
        {
            await copy.WriteAsync(result.Headlines.Select(h => h.Label).ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Text, ct);
            await copy.WriteAsync(result.Headlines.Select(h => h.Value).ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Real, ct);
            await copy.WriteAsync(result.Headlines.Select(h => h.Lower).ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Real, ct);
            await copy.WriteAsync(result.Headlines.Select(h => h.Upper).ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Real, ct);
            await copy.WriteAsync(result.Headlines.Select(h => h.Events).ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Integer, ct);
        }

        await copy.WriteAsync(result.Detail, NpgsqlDbType.Json, ct);

        Task TextAsync(string? text) => text is null ? copy.WriteNullAsync(ct) : copy.WriteAsync(text, NpgsqlDbType.Text, ct);
    }
}
