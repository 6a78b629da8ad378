using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Records.Words;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Grpc.Core;
using Score = FleetTrend.Trends.Scores.Score;

namespace FleetTrend.Api.Trends;

/// <summary>Reads published trends.</summary>
internal sealed class TrendReader(ResultReader results, FreshnessReader freshness)
{
    /// <summary>One page of the answers of an analysis.</summary>
    /// <param name="page">Which page.</param>
    /// <param name="analysis">The analysis.</param>
    /// <param name="filter">Which rows.</param>
    /// <param name="arrange">Chooses and orders the answers of these rows; null takes all in the order of the analysis, and reads no more than the
    /// page.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<TrendPage<T>> PageAsync<T>(
        AsOfPageRequest page, Analysis<T> analysis, ResultFilter filter, Func<IEnumerable<T>, IEnumerable<T>>? arrange, CancellationToken ct)
        where T : notnull
    {
        var trends = await ReadAsync(page.AsOf, ct);
        var found = arrange is null
            ? await results.ReadAsync(trends, analysis, filter, page.After, page.Size + 1, ct)
            : [.. arrange(await results.ReadAsync(trends, analysis, filter, ct)).Skip((int)page.After).Take(page.Size + 1)];
        var hasMore = found.Count > page.Size;
        return new TrendPage<T>(
            hasMore ? [.. found.Take(page.Size)] : found,
            hasMore ? page.NextToken(trends.AsOf, page.After + page.Size) : "",
            OriginOf(trends),
            await FreshnessAsync(trends.AsOf, ct));
    }

    /// <summary>What is said beside figures that were off lately.</summary>
    /// <param name="origin">Where the figures come from.</param>
    /// <param name="say">Which of the scores of that moment are about them.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IEnumerable<string>> OffAsync(TrendOrigin origin, Func<IEnumerable<Score>, IEnumerable<string>> say, CancellationToken ct)
    {
        var published = await ReadAsync(origin.AsOfTime.ToDateTimeOffset(), ct);
        return say(await results.ReadAsync(published, Analyses.Scores, new ResultFilter(), ct)).Select(FirstLetter.Capital);
    }

    /// <summary>How fresh results of a moment are now.</summary>
    public async Task<Freshness> FreshnessAsync(DateTimeOffset asOf, CancellationToken ct) =>
        ((await freshness.ReadAsync(ct)) with { AsOf = asOf }).ToWire();

    /// <summary>How fresh results of the latest refresh are now.</summary>
    /// <exception cref="RpcException">NO_TRENDS_YET: none has run.</exception>
    public async Task<Freshness> LatestFreshnessAsync(CancellationToken ct)
    {
        var latest = await freshness.ReadAsync(ct);
        return latest.AsOf is null ? throw NoTrendsYet() : latest.ToWire();
    }

    /// <summary>What is published of that moment, or the latest.</summary>
    /// <exception cref="RpcException">There is nothing.</exception>
    public async Task<PublishedTrends> ReadAsync(DateTimeOffset? asOf, CancellationToken ct) =>
        (asOf is { } moment ? await results.AtAsync(moment, ct) : await results.LatestAsync(ct))
        ?? throw (asOf is null
            ? NoTrendsYet()
            : new Refusal("page_token", "", Reasons.PageTokenInvalid, "must be a token of trends that are still kept").ToException());

    private static RpcException NoTrendsYet()
    {
        var status = RefusalStatus.Build(new Refusal("", "", Reasons.NoTrendsYet, "must come after the first refresh"));
        status.Message = "No refresh has run yet, so nothing is known. The first follows the first records by itself; RequestRefresh asks for one.";
        return status.ToRpcException();
    }

    /// <summary>Where results of a moment come from.</summary>
    public static TrendOrigin OriginOf(PublishedTrends trends) => new()
    {
        AsOfTime = trends.AsOf.ToWire(),
        CodeVersion = trends.CodeVersion,
        ParametersJson = trends.ParametersJson,
    };
}
