using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Store.Snapshots;
using FleetTrend.Trends;
using Grpc.Core;

namespace FleetTrend.Api.Trends;

/// <summary>Reads stored trends.</summary>
internal sealed class TrendReader(SnapshotStore snapshots, FreshnessReader freshness)
{
    private volatile TrendSnapshot? _parsed;

    /// <summary>One page of a list that <paramref name="select"/> takes from the trends.</summary>
    public async Task<TrendPage<T>> PageAsync<T>(
        AsOfPageRequest page, Func<TrendSnapshot, IEnumerable<T>> select, CancellationToken ct)
    {
        var snapshot = await ReadAsync(page.AsOf, ct);
        var items = select(snapshot).Skip((int)page.After).Take(page.Size + 1).ToList();
        var hasMore = items.Count > page.Size;
        return new TrendPage<T>(
            hasMore ? items[..page.Size] : items,
            hasMore ? page.NextToken(snapshot.AsOf, page.After + page.Size) : "",
            OriginOf(snapshot),
            await FreshnessAsync(snapshot.AsOf, ct));
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

    /// <summary>The trends of that moment, or the latest.</summary>
    /// <exception cref="RpcException">There are none.</exception>
    public async Task<TrendSnapshot> ReadAsync(DateTimeOffset? asOf, CancellationToken ct)
    {
        var stored = asOf is { } moment ? await snapshots.AtAsync(moment, ct) : await snapshots.LatestAsync(ct);
        if (stored is null)
        {
            throw asOf is null
                ? NoTrendsYet()
                : new Refusal("page_token", "", Reasons.PageTokenInvalid, "must be a token of trends that are still kept").ToException();
        }

        if (_parsed is { } parsed && parsed.AsOf == stored.AsOf)
            return parsed;
        return _parsed = TrendSnapshotJson.Read(stored.TrendsJson);
    }

    private static RpcException NoTrendsYet()
    {
        var status = RefusalStatus.Build(new Refusal("", "", Reasons.NoTrendsYet, "must come after the first refresh"));
        status.Message = "No refresh has run yet, so nothing is known. The first follows the first records by itself; RequestRefresh asks for one.";
        return status.ToRpcException();
    }

    private static TrendOrigin OriginOf(TrendSnapshot snapshot) => new()
    {
        AsOfTime = snapshot.AsOf.ToWire(),
        CodeVersion = snapshot.CodeVersion,
        ParametersJson = JsonSerializer.Serialize(snapshot.Parameters, TrendSnapshotJson.Options),
    };
}
