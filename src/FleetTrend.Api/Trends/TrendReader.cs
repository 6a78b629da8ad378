using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Store.Snapshots;
using FleetTrend.Trends;

namespace FleetTrend.Api.Trends;

/// <summary>Reads stored trends.</summary>
internal sealed class TrendReader(SnapshotStore snapshots)
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
            hasMore ? items[..page.Size] : items, hasMore ? page.NextToken(snapshot.AsOf, page.After + page.Size) : "", OriginOf(snapshot));
    }

    /// <summary>The trends of that moment, or the latest.</summary>
    /// <exception cref="Grpc.Core.RpcException">There are none.</exception>
    public async Task<TrendSnapshot> ReadAsync(DateTimeOffset? asOf, CancellationToken ct)
    {
        var stored = asOf is { } moment ? await snapshots.AtAsync(moment, ct) : await snapshots.LatestAsync(ct);
        if (stored is null)
        {
            throw asOf is null
                ? new Refusal("", "", Reasons.NoTrendsYet, "must come after a first refresh has run").ToException()
                : new Refusal("page_token", "", Reasons.PageTokenInvalid, "must be a token of trends that are still kept").ToException();
        }

        if (_parsed is { } parsed && parsed.AsOf == stored.AsOf)
            return parsed;
        return _parsed = TrendSnapshotJson.Read(stored.TrendsJson);
    }

    private static TrendOrigin OriginOf(TrendSnapshot snapshot) => new()
    {
        AsOfTime = snapshot.AsOf.ToWire(),
        CodeVersion = snapshot.CodeVersion,
        ParametersJson = JsonSerializer.Serialize(snapshot.Parameters, TrendSnapshotJson.Options),
    };
}
