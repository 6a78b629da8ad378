using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Texts;
using FleetTrend.Store.DataProblems;
using FindingName = FleetTrend.Store.DataProblems.FindingName;
using RecordKey = FleetTrend.Records.Sources.RecordKey;

namespace FleetTrend.Api.DataProblems;

/// <summary>What people answer to data problems, and decide about findings, by a call or by a form: the same rules and the same
/// refusals.</summary>
internal sealed class DataProblemAnswers(DataProblemStore problems, FindingMergeStore merges, ILogger<DataProblemAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Closing = "/fleettrend.v1.CheckService/CloseDataCheck";

    /// <summary>The call that a form stands for.</summary>
    public const string Merging = "/fleettrend.v1.CheckService/MergeFindings";

    /// <summary>The call that a form stands for.</summary>
    public const string Unmerging = "/fleettrend.v1.CheckService/UnmergeFindings";

    /// <summary>Closes an open problem.</summary>
    public async Task<Answer<StoredDataProblem>> CloseAsync(CloseDataCheckRequest request, Caller caller, CancellationToken ct)
    {
        if (DataProblemRules.Closing(request) is { Count: > 0 } refusals)
            return Answer<StoredDataProblem>.Refuse(refusals);
        var problem = long.TryParse(request.CheckId, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? await problems.CloseAsync(id, request.ClosedBy, request.Note, !request.ValidateOnly, ct)
            : null;
        if (problem is null)
            return new Refusal("check_id", request.CheckId, Reasons.CheckNotFound, "must be the identifier of a data check");
        if (problem.State != DataProblemState.Closed || problem.ClosedBy != request.ClosedBy || problem.CloseNote != request.Note)
            return new Refusal("check_id", request.CheckId, Reasons.CheckNotOpen, "must be a data check that is open");
        if (!request.ValidateOnly)
            ApiLog.DataProblemClosed(log, problem.ProblemId, caller.LogName);
        return problem;
    }

    /// <summary>Makes two findings one event.</summary>
    public async Task<Answer<StoredMerge>> MergeAsync(MergeFindingsRequest request, Caller caller, CancellationToken ct)
    {
        if (DataProblemRules.Merge(request) is { Count: > 0 } refusals)
            return Answer<StoredMerge>.Refuse(refusals);
        var (kept, merged) = (request.Kept.ToStore(), request.Merged.ToStore());
        var result = await merges.MergeAsync(kept, merged, request.DecidedBy, request.Note, !request.ValidateOnly, ct);
        if (!result.Holds)
            return RefusalOf(result, kept, merged);
        if (request.ValidateOnly)
            return result.Merge!;
        // Also where the merge was there before: a call that broke off between the two is made whole by its repetition.
        await problems.CloseProblemAsync(
            Offer(result.Registration!, kept, merged), result.Merge!.DecidedBy,
            $"Merged {Name(merged)} into {Name(kept)}: {result.Merge.Note}", ct);
        ApiLog.MergeDecided(log, result.Merge.MergeId, caller.LogName);
        return result.Merge;
    }

    /// <summary>Takes a merge back.</summary>
    public async Task<Answer<StoredMerge>> UnmergeAsync(UnmergeFindingsRequest request, Caller caller, CancellationToken ct)
    {
        if (DataProblemRules.Unmerge(request) is { Count: > 0 } refusals)
            return Answer<StoredMerge>.Refuse(refusals);
        var merged = request.Merged.ToStore();
        var result = await merges.UnmergeAsync(merged, request.DecidedBy, request.Note, !request.ValidateOnly, ct);
        if (!result.Holds)
            return RefusalOf(result, merged, merged);
        if (request.ValidateOnly)
            return result.Merge!;
        if (result.Registration is { } registration)
            await problems.OfferAgainAsync(Offer(registration, result.Merge!.Kept, merged), ct);
        ApiLog.MergeDecided(log, result.Merge!.MergeId, caller.LogName);
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
