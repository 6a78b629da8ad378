using FleetTrend.Api.Access;
using FleetTrend.Api.Trends;
using FleetTrend.Contracts.V1;
using FleetTrend.Store.Flags;
using Grpc.Core;
using FlagState = FleetTrend.Contracts.V1.FlagState;
using StoredState = FleetTrend.Records.Flags.FlagState;

namespace FleetTrend.Api.Flags;

/// <summary>Flags and what people answered to them.</summary>
internal sealed class FlagGrpcService(FlagStore flags, FlagAnswers answers, NameFilters filters, TrendReader trends) : FlagService.FlagServiceBase
{
    private const int MostPerPage = 1_000;

    /// <inheritdoc/>
    public override async Task<ListFlagsResponse> ListFlags(ListFlagsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        StoredState? state = request.State == FlagState.Unspecified ? null : (StoredState)request.State;
        var registration = request.Registration.Length == 0 ? null : request.Registration.ToUpperInvariant();
        var page = await Paging.ReadAsync(request.PageToken, () => flags.ListAsync(
            state, registration, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        var freshness = await trends.LatestFreshnessAsync(context.CancellationToken);
        return new ListFlagsResponse
        {
            Flags = { page.Items.Select(f => f.ToWire()) },
            NextPageToken = page.NextPageToken ?? "",
            Freshness = freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<AcknowledgeFlagResponse> AcknowledgeFlag(AcknowledgeFlagRequest request, ServerCallContext context) =>
        new() { Flag = (await answers.AcknowledgeAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<CloseFlagResponse> CloseFlag(CloseFlagRequest request, ServerCallContext context) =>
        new() { Flag = (await answers.CloseAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<ActOnFlagResponse> ActOnFlag(ActOnFlagRequest request, ServerCallContext context) =>
        new() { Flag = (await answers.ActOnAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<ReopenFlagResponse> ReopenFlag(ReopenFlagRequest request, ServerCallContext context) =>
        new() { Flag = (await answers.ReopenAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<AssignFlagResponse> AssignFlag(AssignFlagRequest request, ServerCallContext context) =>
        new() { Flag = (await answers.AssignAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow().ToWire() };

    /// <inheritdoc/>
    public override async Task<ListFlagStepsResponse> ListFlagSteps(ListFlagStepsRequest request, ServerCallContext context)
    {
        var id = FlagAnswers.IdOf(request.FlagId);
        if (id is null || await flags.GetAsync(id.Value, context.CancellationToken) is null)
            throw FlagAnswers.Unknown(request.FlagId).ToException();
        var page = await Paging.ReadAsync(request.PageToken, () => flags.ListStepsAsync(
            id.Value, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListFlagStepsResponse { Steps = { page.Items.Select(step => step.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }
}
