using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Sources;
using Grpc.Core;
using Source = FleetTrend.Contracts.V1.Source;

namespace FleetTrend.Api.Sources;

/// <summary>Systems that push records.</summary>
internal sealed class SourceGrpcService(SourceStore sources) : SourceService.SourceServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<CreateSourceResponse> CreateSource(CreateSourceRequest request, ServerCallContext context)
    {
        var refusals = SourceRules.Check(request.Source);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var (result, stored) = request.ValidateOnly
            ? await sources.CheckAsync(request.Source.Name, request.Source.Title, context.CancellationToken)
            : await sources.AddAsync(request.Source.Name, request.Source.Title, context.CancellationToken);
        if (!result.IsStored)
        {
            throw new Refusal("source.name", request.Source.Name, Reasons.NameInUse, "must be a name that is free, or the very same source again")
                .ToException();
        }

        return new CreateSourceResponse { Source = ToWire(stored) };
    }

    /// <inheritdoc/>
    public override async Task<ListSourcesResponse> ListSources(ListSourcesRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => sources.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListSourcesResponse { Sources = { page.Items.Select(ToWire) }, NextPageToken = page.NextPageToken ?? "" };
    }

    private static Source ToWire(Store.Sources.Source source) =>
        new() { Name = source.Name, Title = source.Title, CreateTime = source.CreateTime.ToWire() };
}
