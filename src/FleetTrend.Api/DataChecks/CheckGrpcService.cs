using System.Globalization;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Store.DataChecks;
using Grpc.Core;
using FindingName = FleetTrend.Store.DataChecks.FindingName;
using RecordKey = FleetTrend.Records.Sources.RecordKey;
using StoredState = FleetTrend.Store.DataChecks.DataCheckState;

namespace FleetTrend.Api.DataChecks;

/// <summary>Data checks, what people answered to them, and findings that people have decided are one event.</summary>
internal sealed class CheckGrpcService(DataCheckStore checks, FindingMergeStore merges) : CheckService.CheckServiceBase
{
    private const int MostPerPage = 1_000;

    /// <inheritdoc/>
    public override async Task<ListDataChecksResponse> ListDataChecks(ListDataChecksRequest request, ServerCallContext context)
    {
        Refuse(CheckRules.Question(request));
        var filter = new DataCheckFilter(
            request.State == Contracts.V1.DataCheckState.Unspecified ? null : (StoredState)request.State,
            request.Kind == DataCheckKind.Unspecified ? null : ((DataProblemKind)request.Kind).ToString(),
            request.Registration.Length == 0 ? null : request.Registration.ToUpperInvariant());
        var page = await Paging.ReadAsync(request.PageToken, () => checks.ListAsync(
            filter, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListDataChecksResponse { Checks = { page.Items.Select(c => c.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<CloseDataCheckResponse> CloseDataCheck(CloseDataCheckRequest request, ServerCallContext context)
    {
        Refuse(CheckRules.Closing(request));
        var check = long.TryParse(request.CheckId, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? await checks.CloseAsync(id, request.ClosedBy, request.Note, context.CancellationToken)
            : null;
        if (check is null)
            throw new Refusal("check_id", request.CheckId, Reasons.CheckNotFound, "the identifier of a data check.").ToException();
        if (check.State != StoredState.Closed || check.ClosedBy != request.ClosedBy || check.CloseNote != request.Note)
            throw new Refusal("check_id", request.CheckId, Reasons.CheckNotOpen, "a data check that is open.").ToException();
        return new CloseDataCheckResponse { Check = check.ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<MergeFindingsResponse> MergeFindings(MergeFindingsRequest request, ServerCallContext context)
    {
        Refuse(CheckRules.Merge(request));
        var (kept, merged) = (request.Kept.ToStore(), request.Merged.ToStore());
        var result = await merges.MergeAsync(kept, merged, request.DecidedBy, request.Note, context.CancellationToken);
        if (!result.Holds)
            throw RefusalOf(result, kept, merged).ToException();
        // Also where the merge was there before: a call that broke off between the two is made whole by its repetition.
        await checks.CloseProblemAsync(
            Offer(result.Registration!, kept, merged), result.Merge!.DecidedBy,
            $"Merged {Name(merged)} into {Name(kept)}: {result.Merge.Note}", context.CancellationToken);
        return new MergeFindingsResponse { Merge = result.Merge.ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<UnmergeFindingsResponse> UnmergeFindings(UnmergeFindingsRequest request, ServerCallContext context)
    {
        Refuse(CheckRules.Unmerge(request));
        var merged = request.Merged.ToStore();
        var result = await merges.UnmergeAsync(merged, request.DecidedBy, request.Note, context.CancellationToken);
        if (!result.Holds)
            throw RefusalOf(result, merged, merged).ToException();
        if (result.Registration is { } registration)
            await checks.OfferAgainAsync(Offer(registration, result.Merge!.Kept, merged), context.CancellationToken);
        return new UnmergeFindingsResponse { Merge = result.Merge!.ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<ListFindingMergesResponse> ListFindingMerges(ListFindingMergesRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => merges.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListFindingMergesResponse { Merges = { page.Items.Select(m => m.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <summary>Identity of the problem that offers two findings as one.</summary>
    private static string Offer(string registration, FindingName kept, FindingName merged) =>
        new DataProblem(
            DataProblemKind.PossibleDuplicate, registration, default, "",
            [new RecordKey(kept.Source, kept.SourceRecordId, 1), new RecordKey(merged.Source, merged.SourceRecordId, 1)]).Identity;

    private static Refusal RefusalOf(MergeResult result, FindingName kept, FindingName merged) => result.State switch
    {
        MergeState.KeptNotFound => new("kept", Name(kept), Reasons.FindingNotFound, "a finding that is there and was not taken back."),
        MergeState.MergedNotFound => new("merged", Name(merged), Reasons.FindingNotFound, "a finding that is there and was not taken back."),
        MergeState.NotAlike => new("merged", Name(merged), Reasons.FindingsNotAlike, "a finding of the same aircraft, location and condition as kept."),
        MergeState.KeptIsMerged => new("kept", Name(kept), Reasons.FindingIsMerged, $"a finding that stands; this one is merged into {Name(result.Merge!.Kept)}."),
        MergeState.MergedElsewhere => new("merged", Name(merged), Reasons.FindingIsMerged, $"a finding that stands; this one is merged into {Name(result.Merge!.Kept)}."),
        MergeState.NotMerged => new("merged", Name(merged), Reasons.FindingNotMerged, "a finding that was merged into another."),
        _ => throw new InvalidOperationException($"{result.State} is no refusal."),
    };

    private static string Name(FindingName finding) => $"{finding.Source} {finding.SourceRecordId}";

    private static void Refuse(IReadOnlyList<Refusal> refusals)
    {
        if (refusals.Count > 0)
            throw refusals.ToException();
    }
}
