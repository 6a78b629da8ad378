using System.Globalization;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Flags;
using Grpc.Core;
using FlagState = FleetTrend.Contracts.V1.FlagState;
using StoredState = FleetTrend.Store.Flags.FlagState;

namespace FleetTrend.Api.Flags;

/// <summary>Flags and what people answered to them.</summary>
internal sealed class FlagGrpcService(FlagStore flags) : FlagService.FlagServiceBase
{
    private const int MostPerPage = 1_000;

    /// <inheritdoc/>
    public override async Task<ListFlagsResponse> ListFlags(ListFlagsRequest request, ServerCallContext context)
    {
        if (!Enum.IsDefined(request.State))
        {
            throw new Refusal("state", $"{(int)request.State}", Reasons.EnumUnknown, "a state of the contract, or unspecified.").ToException();
        }

        StoredState? state = request.State == FlagState.Unspecified ? null : (StoredState)request.State;
        var registration = request.Registration.Length == 0 ? null : request.Registration.ToUpperInvariant();
        var page = await Paging.ReadAsync(request.PageToken, () => flags.ListAsync(
            state, registration, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListFlagsResponse { Flags = { page.Items.Select(f => f.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<AcknowledgeFlagResponse> AcknowledgeFlag(AcknowledgeFlagRequest request, ServerCallContext context)
    {
        Refuse(FlagAnswerRules.Acknowledgement(request));
        var flag = await flags.AcknowledgeAsync(
            IdOf(request.FlagId), request.AcknowledgedBy, request.Comment, context.CancellationToken);
        return new AcknowledgeFlagResponse { Flag = Answered(flag, request.FlagId, request.AcknowledgedBy, request.Comment, StoredState.Acknowledged).ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<CloseFlagResponse> CloseFlag(CloseFlagRequest request, ServerCallContext context)
    {
        Refuse(FlagAnswerRules.Closing(request));
        var flag = await flags.CloseAsync(IdOf(request.FlagId), request.ClosedBy, request.Comment, context.CancellationToken);
        return new CloseFlagResponse { Flag = Answered(flag, request.FlagId, request.ClosedBy, request.Comment, StoredState.Closed).ToWire() };
    }

    private static void Refuse(IReadOnlyList<Refusal> refusals)
    {
        if (refusals.Count > 0)
            throw refusals.ToException();
    }

    private static long IdOf(string flagId) =>
        long.TryParse(flagId, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : throw NotFound(flagId);

    /// <summary>The flag with the answer that was given; a closed flag keeps the one that it has.</summary>
    private static StoredFlag Answered(StoredFlag? flag, string flagId, string by, string comment, StoredState state)
    {
        if (flag is null)
            throw NotFound(flagId);
        if (flag.State != state || flag.AnsweredBy != by || flag.Answer != comment)
            throw new Refusal("flag_id", flagId, Reasons.FlagIsClosed, "a flag that is not closed.").ToException();
        return flag;
    }

    private static RpcException NotFound(string flagId) =>
        new Refusal("flag_id", flagId, Reasons.FlagNotFound, "the identifier of a flag.").ToException();
}
