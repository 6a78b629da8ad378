using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Codes;
using Grpc.Core;

namespace FleetTrend.Api.Codes;

/// <summary>What the codes of sources mean, and which have no meaning yet.</summary>
internal sealed class CodeGrpcService(CodeStore codes, CodeAnswers answers, NameFilters filters) : CodeService.CodeServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<SetCodeResponse> SetCode(SetCodeRequest request, ServerCallContext context) =>
        (await answers.SetAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow();

    /// <inheritdoc/>
    public override async Task<DeleteCodeResponse> DeleteCode(DeleteCodeRequest request, ServerCallContext context)
    {
        Caller.SourceFor(context, "source", request.Source);
        var code = CodeRules.Parse(request, out var refusals);
        if (refusals.Count > 0)
            throw refusals.ToException();
        return await codes.DeleteAsync(code, write: !request.ValidateOnly, context.CancellationToken)
            ? new DeleteCodeResponse()
            : throw new Refusal("code", code.Code, Reasons.CodeNotFound, "must be a code of the source that has a meaning").ToException();
    }

    /// <inheritdoc/>
    public override async Task<ListCodesResponse> ListCodes(ListCodesRequest request, ServerCallContext context)
    {
        var source = Caller.SourceFor(context, "source", request.Source);
        RefuseAny(SourceRules.CheckName("source", source));
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await Paging.ReadAsync(request.PageToken, () => codes.ListAsync(
            source, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListCodesResponse { Codes = { page.Items.Select(c => c.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<ListUnmappedCodesResponse> ListUnmappedCodes(ListUnmappedCodesRequest request, ServerCallContext context)
    {
        var source = Caller.SourceFor(context, "source", request.Source);
        if (source.Length > 0)
            RefuseAny(SourceRules.CheckName("source", source));
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await Paging.ReadAsync(request.PageToken, () => codes.ListUnmappedAsync(
            source.Length == 0 ? null : source, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListUnmappedCodesResponse { Codes = { page.Items.Select(c => c.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    private static void RefuseAny(IReadOnlyList<Refusal> refusals)
    {
        if (refusals.Count > 0)
            throw refusals.ToException();
    }
}
