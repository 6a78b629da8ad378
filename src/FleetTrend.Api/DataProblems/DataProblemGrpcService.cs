using FleetTrend.Api.Access;
using FleetTrend.Api.Trends;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Store.DataProblems;
using Grpc.Core;


namespace FleetTrend.Api.DataProblems;

/// <summary>Data problems, what people answered to them, and findings that people have decided are one event.</summary>
internal sealed class DataProblemGrpcService(
    DataProblemStore problems, FindingMergeStore merges, DataProblemAnswers answers, NameFilters filters, TrendReader trends) : CheckService.CheckServiceBase
{
    private const int MostPerPage = 1_000;

    /// <inheritdoc/>
    public override async Task<ListDataChecksResponse> ListDataChecks(ListDataChecksRequest request, ServerCallContext context)
    {
        if (DataProblemRules.Question(request) is { Count: > 0 } refusals)
            throw refusals.ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var filter = new DataProblemFilter(
            request.State == Contracts.V1.DataCheckState.Unspecified ? null : (DataProblemState)request.State,
            request.Kind == DataCheckKind.Unspecified ? null : ((DataProblemKind)request.Kind).ToString(),
            request.Registration.Length == 0 ? null : request.Registration.ToUpperInvariant());
        var page = await Paging.ReadAsync(request.PageToken, () => problems.ListAsync(
            filter, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        var freshness = await trends.LatestFreshnessAsync(context.CancellationToken);
        return new ListDataChecksResponse
        {
            Checks = { page.Items.Select(c => c.ToWire()) },
            NextPageToken = page.NextPageToken ?? "",
            Freshness = freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<CloseDataCheckResponse> CloseDataCheck(CloseDataCheckRequest request, ServerCallContext context) =>
        new() { Check = (await answers.CloseAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<MergeFindingsResponse> MergeFindings(MergeFindingsRequest request, ServerCallContext context) =>
        new() { Merge = (await answers.MergeAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<UnmergeFindingsResponse> UnmergeFindings(UnmergeFindingsRequest request, ServerCallContext context) =>
        new() { Merge = (await answers.UnmergeAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<ListFindingMergesResponse> ListFindingMerges(ListFindingMergesRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => merges.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListFindingMergesResponse { Merges = { page.Items.Select(m => m.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }
}
