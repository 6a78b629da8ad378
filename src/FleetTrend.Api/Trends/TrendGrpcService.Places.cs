using FleetTrend.Contracts.V1;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Grpc.Core;

namespace FleetTrend.Api.Trends;

/// <content>Where on the engine, and at which parts, things are found.</content>
internal sealed partial class TrendGrpcService
{
    /// <inheritdoc/>
    public override async Task<ListPartNumbersResponse> ListPartNumbers(ListPartNumbersRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.PartNumbers, new ResultFilter { TypeGroup = Asked(request.TypeGroup), Kind = Asked(request.Kind) },
            Analyses.PartNumbers.Order, context.CancellationToken);
        return new ListPartNumbersResponse
        {
            PartNumbers = { page.Items.Select(n => n.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListPositionsResponse> ListPositions(ListPositionsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Positions,
            new ResultFilter(), // type groups are put together, and all comparisons allowed for, before any is left out
            all => Analyses.Positions.Order(all)
                .Where(p => request.TypeGroup.Length == 0 || p.TypeGroups.Contains(request.TypeGroup, StringComparer.Ordinal))
                .Where(p => request.Kind.Length == 0 || p.Kind == request.Kind),
            context.CancellationToken);
        return new ListPositionsResponse
        {
            Positions = { page.Items.Select(p => p.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListShroudsResponse> ListShrouds(ListShroudsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Shrouds,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup) },
            arrange: null,
            context.CancellationToken);
        return new ListShroudsResponse
        {
            Shrouds = { page.Items.Select(s => s.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }
}
