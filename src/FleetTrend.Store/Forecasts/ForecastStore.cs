using Npgsql;

namespace FleetTrend.Store.Forecasts;

/// <summary>
/// Forecasts as they were published, the first of each quarter, type group and analysis, so that what then happened can be held against them. A row never
/// changes and never goes.
/// </summary>
public sealed class ForecastStore(NpgsqlDataSource dataSource)
{
    /// <summary>Keeps forecasts; where the quarter of the moment has one of the type group and analysis already, that stays.</summary>
    /// <param name="quarter">First day of the quarter of the moment.</param>
    /// <param name="forecasts">The forecasts.</param>
    /// <param name="ct">Cancels.</param>
    public async Task KeepAsync(DateOnly quarter, IReadOnlyCollection<KeptForecast> forecasts, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            insert into kept_forecasts (type_group, analysis, quarter_date, as_of, detail_json)
            select type_group, analysis, @quarter, as_of, detail::json
            from unnest(@groups, @analyses, @moments, @details) as kept (type_group, analysis, as_of, detail)
            on conflict do nothing
            """);
        command.Parameters.AddWithValue("quarter", quarter);
        command.Parameters.AddWithValue("groups", forecasts.Select(f => f.TypeGroup).ToArray());
        command.Parameters.AddWithValue("analyses", forecasts.Select(f => f.Analysis).ToArray());
        command.Parameters.AddWithValue("moments", forecasts.Select(f => f.AsOf.ToUniversalTime()).ToArray());
        command.Parameters.AddWithValue("details", forecasts.Select(f => f.DetailJson).ToArray());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Type groups and analyses of which a quarter has a forecast.</summary>
    public async Task<IReadOnlySet<(string TypeGroup, string Analysis)>> ReadKeptAsync(DateOnly quarter, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("select type_group, analysis from kept_forecasts where quarter_date = @quarter");
        command.Parameters.AddWithValue("quarter", quarter);
        var kept = new HashSet<(string TypeGroup, string Analysis)>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            kept.Add((reader.GetString(0), reader.GetString(1)));
        return kept;
    }

    /// <summary>Forecasts of a type group that were published before a moment and after another, earliest first.</summary>
    public async Task<IReadOnlyList<KeptForecast>> ReadAsync(string typeGroup, DateTimeOffset after, DateTimeOffset before, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "select analysis, as_of, detail_json from kept_forecasts where type_group = @group and as_of > @after and as_of < @before order by as_of, analysis");
        command.Parameters.AddWithValue("group", typeGroup);
        command.Parameters.AddWithValue("after", after.ToUniversalTime());
        command.Parameters.AddWithValue("before", before.ToUniversalTime());
        var kept = new List<KeptForecast>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            kept.Add(new KeptForecast(typeGroup, reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1), reader.GetString(2)));
        return kept;
    }
}
