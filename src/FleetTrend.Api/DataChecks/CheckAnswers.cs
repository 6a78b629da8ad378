using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Texts;
using FleetTrend.Store.DataChecks;
using DataCheckState = FleetTrend.Store.DataChecks.DataCheckState;
using FindingName = FleetTrend.Store.DataChecks.FindingName;
using RecordKey = FleetTrend.Records.Sources.RecordKey;

namespace FleetTrend.Api.DataChecks;

/// <summary>What people answer to data checks, and decide about findings, by a call or by a form: the same rules and the same
/// refusals.</summary>
internal sealed class CheckAnswers(DataCheckStore checks, FindingMergeStore merges, ILogger<CheckAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Closing = "/fleettrend.v1.CheckService/CloseDataCheck";

    /// <summary>The call that a form stands for.</summary>
    public const string Merging = "/fleettrend.v1.CheckService/MergeFindings";

    /// <summary>The call that a form stands for.</summary>
    public const string Unmerging = "/fleettrend.v1.CheckService/UnmergeFindings";

    /// <summary>Closes an open check.</summary>
    public async Task<Answer<StoredDataCheck>> CloseAsync(CloseDataCheckRequest request, Caller caller, CancellationToken ct)
    {
        if (CheckRules.Closing(request) is { Count: > 0 } refusals)
            return Answer<StoredDataCheck>.Of(refusals);
        var check = long.TryParse(request.CheckId, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? await checks.CloseAsync(id, request.ClosedBy, request.Note, !request.ValidateOnly, ct)
            : null;
        if (check is null)
            return new Refusal("check_id", request.CheckId, Reasons.CheckNotFound, "must be the identifier of a data check");
        if (check.State != DataCheckState.Closed || check.ClosedBy != request.ClosedBy || check.CloseNote != request.Note)
            return new Refusal("check_id", request.CheckId, Reasons.CheckNotOpen, "must be a data check that is open");
        if (!request.ValidateOnly)
            ApiLog.CheckClosed(log, check.CheckId, caller.Key.Id);
        return check;
    }

    /// <summary>Makes two findings one event.</summary>
    public async Task<Answer<StoredMerge>> MergeAsync(MergeFindingsRequest request, Caller caller, CancellationToken ct)
    {
        if (CheckRules.Merge(request) is { Count: > 0 } refusals)
            return Answer<StoredMerge>.Of(refusals);
        var (kept, merged) = (request.Kept.ToStore(), request.Merged.ToStore());
        var result = await merges.MergeAsync(kept, merged, request.DecidedBy, request.Note, !request.ValidateOnly, ct);
        if (!result.Holds)
            return RefusalOf(result, kept, merged);
        if (request.ValidateOnly)
            return result.Merge!;
        // Also where the merge was there before: a call that broke off between the two is made whole by its repetition.
        await checks.CloseProblemAsync(
            Offer(result.Registration!, kept, merged), result.Merge!.DecidedBy,
            $"Merged {Name(merged)} into {Name(kept)}: {result.Merge.Note}", ct);
        ApiLog.MergeDecided(log, result.Merge.MergeId, caller.Key.Id);
        return result.Merge;
    }

    /// <summary>Takes a merge back.</summary>
    public async Task<Answer<StoredMerge>> UnmergeAsync(UnmergeFindingsRequest request, Caller caller, CancellationToken ct)
    {
        if (CheckRules.Unmerge(request) is { Count: > 0 } refusals)
            return Answer<StoredMerge>.Of(refusals);
        var merged = request.Merged.ToStore();
        var result = await merges.UnmergeAsync(merged, request.DecidedBy, request.Note, !request.ValidateOnly, ct);
        if (!result.Holds)
            return RefusalOf(result, merged, merged);
        if (request.ValidateOnly)
            return result.Merge!;
        if (result.Registration is { } registration)
            await checks.OfferAgainAsync(Offer(registration, result.Merge!.Kept, merged), ct);
        ApiLog.MergeDecided(log, result.Merge!.MergeId, caller.Key.Id);
        return result.Merge;
    }

    /// <summary>Identity of the problem that offers two findings as one.</summary>
    private static string Offer(string registration, FindingName kept, FindingName merged) =>
        new DataProblem(
            DataProblemKind.PossibleDuplicate, registration, default, "",
            [new RecordKey(kept.Source, kept.SourceRecordId, 1), new RecordKey(merged.Source, merged.SourceRecordId, 1)]).Identity;

    private static Refusal RefusalOf(MergeResult result, FindingName kept, FindingName merged) => result.State switch
    {
        MergeState.KeptNotFound => new("kept", Name(kept), Reasons.FindingNotFound, "must be a finding that is there and was not taken back"),
        MergeState.MergedNotFound => new("merged", Name(merged), Reasons.FindingNotFound, "must be a finding that is there and was not taken back"),
        MergeState.NotAlike => new("merged", Name(merged), Reasons.FindingsNotAlike, "must be a finding of the same aircraft, location and condition as kept"),
        MergeState.KeptIsMerged => new("kept", Name(kept), Reasons.FindingIsMerged, $"must be a finding that stands; this one is merged into {Name(result.Merge!.Kept)}"),
        MergeState.MergedElsewhere => new("merged", Name(merged), Reasons.FindingIsMerged, $"must be a finding that stands; this one is merged into {Name(result.Merge!.Kept)}"),
        MergeState.NotMerged => new("merged", Name(merged), Reasons.FindingNotMerged, "must be a finding that was merged into another"),
        _ => throw new InvalidOperationException($"{result.State} is no refusal."),
    };

    private static string Name(FindingName finding) => $"{finding.Source} {ForeignText.Identifier(finding.SourceRecordId)}";
}
