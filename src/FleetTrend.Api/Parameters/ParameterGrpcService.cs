using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Store.Parameters;
using Grpc.Core;

namespace FleetTrend.Api.Parameters;

/// <summary>What the trends are computed with, and how that changed.</summary>
internal sealed class ParameterGrpcService(ParameterStore parameters, ParameterAnswers answers) : ParameterService.ParameterServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<GetParametersResponse> GetParameters(GetParametersRequest request, ServerCallContext context) =>
        new() { Parameters = (await parameters.ReadAsync(asOf: null, context.CancellationToken)).ToWire() };

    /// <inheritdoc/>
    public override async Task<ChangeParametersResponse> ChangeParameters(ChangeParametersRequest request, ServerCallContext context) =>
        new() { Parameters = (await answers.ChangeAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<ListParameterRevisionsResponse> ListParameterRevisions(
        ListParameterRevisionsRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => parameters.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListParameterRevisionsResponse
        {
            Revisions = { page.Items.Select(r => r.ToWire()) },
            NextPageToken = page.NextPageToken ?? "",
        };
    }
}
