using FleetTrend.Results.Reading;
using FleetTrend.Store.Forecasts;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Results.Forecasts;

/// <summary>Keeps what was forecast when it is first published in a quarter: the score is kept by that, and by nothing computed afterwards.</summary>
public sealed class ForecastKeeper(ForecastStore forecasts, ResultReader reader)
{
    /// <summary>Keeps what the quarter of a published moment does not have yet; again, it does nothing more.</summary>
    /// <param name="trends">The moment.</param>
    /// <param name="typeGroups">Its type groups.</param>
    /// <param name="ct">Cancels.</param>
    public async Task KeepAsync(PublishedTrends trends, IReadOnlyCollection<string> typeGroups, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(trends);
        ArgumentNullException.ThrowIfNull(typeGroups);
        var quarter = Quarter.Of(DateOnly.FromDateTime(trends.AsOf.UtcDateTime)).StartDate;
        var kept = await forecasts.ReadKeptAsync(quarter, ct);
        foreach (var typeGroup in typeGroups.Where(g => KeptForecasts.Names.Any(n => !kept.Contains((g, n)))))
        {
            var spares = await MissingAsync(Analyses.Spares, Analyses.Spares);
            var written = KeptForecasts.Write(
                spares.Count > 0 ? await ReadAsync(Analyses.Fleet) : [], await MissingAsync(Analyses.FailureChances, Analyses.ChanceCalibrations), spares,
                await MissingAsync(Analyses.DueLooks, Analyses.DueLooks));
            await forecasts.KeepAsync(quarter, [.. written.Select(f => new KeptForecast(typeGroup, f.Name, trends.AsOf, f.Detail))], ct);

            async Task<IReadOnlyList<T>> MissingAsync<T>(Analysis name, Analysis<T> source)
                where T : notnull => kept.Contains((typeGroup, name.Name)) ? [] : await ReadAsync(source);

            Task<IReadOnlyList<T>> ReadAsync<T>(Analysis<T> analysis)
                where T : notnull => reader.ReadAsync(trends, analysis, new ResultFilter { TypeGroup = typeGroup }, ct);
        }
    }
}
