using System.Globalization;
using FleetTrend.Api.DataProblems;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Words;
using FleetTrend.Store.DataProblems;
using Microsoft.AspNetCore.Mvc;
using FindingName = FleetTrend.Contracts.V1.FindingName;
using RecordKey = FleetTrend.Records.Sources.RecordKey;

namespace FleetTrend.Api.Pages.DataProblems;

/// <summary>One data problem: the records behind it, who closed it, and the forms to close it, or to say whether two findings are
/// one event.</summary>
internal sealed class DataProblemModel(DataProblemStore problems, FindingMergeStore merges, DataProblemAnswers answers) : FormPage
{
    /// <summary>Name of a form.</summary>
    public const string Close = "close";

    /// <summary>Name of a form.</summary>
    public const string Merge = "merge";

    /// <summary>The problem; null where there is none of that number.</summary>
    public StoredDataProblem? Problem { get; private set; }

    /// <summary>What is wrong, in words.</summary>
    public string Kind { get; private set; } = "";

    /// <summary>What is wrong, with the values.</summary>
    public string Description { get; private set; } = "";

    /// <summary>Why it matters.</summary>
    public string Matters { get; private set; } = "";

    /// <summary>The two findings of an offer; empty where the problem is no offer.</summary>
    public IReadOnlyList<RecordKey> Offered { get; private set; } = [];

    /// <summary>The merge of the two that holds now; null where none does.</summary>
    public StoredMerge? Merged { get; private set; }

    /// <summary>A record as people and forms name it.</summary>
    public static string Name(RecordKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return $"{key.Source} {key.SourceRecordId}";
    }

    /// <summary>Where all revisions of a record can be read.</summary>
    public static string Address(RecordKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return $"/v1/records:revisions?source={Uri.EscapeDataString(key.Source)}&source_record_id={Uri.EscapeDataString(key.SourceRecordId)}";
    }

    /// <summary>Shows a problem.</summary>
    public Task<IActionResult> OnGetAsync(long id, CancellationToken ct) => ShowAsync(id, ct);

    /// <summary>Closes it; of an offer that says that the two are two events.</summary>
    public async Task<IActionResult> OnPostCloseAsync(long id, CancellationToken ct)
    {
        var request = new CloseDataCheckRequest
        {
            CheckId = id.ToString(CultureInfo.InvariantCulture),
            ClosedBy = Reader.Name,
            Note = Typed("note"),
        };
        return await AnswerAsync(Close, DataProblemAnswers.Closing, caller => answers.CloseAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/data-problems/{request.CheckId}?done={Close}");
    }

    /// <summary>Makes the two findings of an offer one event.</summary>
    public async Task<IActionResult> OnPostMergeAsync(long id, CancellationToken ct)
    {
        await ReadAsync(id, ct);
        var kept = Offered.FirstOrDefault(key => Name(key) == Typed("kept"));
        var merged = Offered.FirstOrDefault(key => key != kept);
        var request = new MergeFindingsRequest { DecidedBy = Reader.Name, Note = Typed("note") };
        if (kept is not null && merged is not null)
        {
            request.Kept = new FindingName { Source = kept.Source, SourceRecordId = kept.SourceRecordId };
            request.Merged = new FindingName { Source = merged.Source, SourceRecordId = merged.SourceRecordId };
        }

        return await AnswerAsync(Merge, DataProblemAnswers.Merging, caller => MergeAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/data-problems/{id.ToString(CultureInfo.InvariantCulture)}?done={Merge}");
    }

    // The other finding follows from the one that is kept, so the form cannot leave it out on its own.
    private async Task<Answer<StoredMerge>> MergeAsync(MergeFindingsRequest request, Access.Caller caller, CancellationToken ct)
    {
        if (Problem is null)
            return new Refusal("check_id", $"{RouteData.Values["id"]}", Reasons.CheckNotFound, "must be the identifier of a data check");
        var answer = await answers.MergeAsync(request, caller, ct);
        return answer.Refusals.Where(refusal => request.Kept is not null || refusal.Field != "merged").ToList() is { Count: > 0 } left
            ? Answer<StoredMerge>.Refuse(left)
            : answer;
    }

    private async Task<IActionResult> ShowAsync(long id, CancellationToken ct)
    {
        await ReadAsync(id, ct);
        if (Problem is null && NotLetIn is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        return Page();
    }

    private async Task ReadAsync(long id, CancellationToken ct)
    {
        Problem = await problems.GetAsync(id, ct);
        if (Problem is null)
            return;
        var known = Enum.TryParse<DataProblemKind>(Problem.Found.Kind, out var kind);
        Kind = known ? DataProblemWords.Name(kind) : Problem.Found.Kind;
        Description = DataProblemWords.Description(
            kind, Problem.Found.Evidence, Problem.Found.Description);
        Matters = known ? DataProblemWords.Matters(kind) : "";
        Merged = null;
        if (kind != DataProblemKind.PossibleDuplicate || Problem.Found.Evidence is not { Count: 2 } two)
            return;
        Offered = two;
        foreach (var key in two)
        {
            if (await merges.LatestAsync(new(key.Source, key.SourceRecordId), ct) is { IsMerged: true } latest)
                Merged = latest;
        }
    }
}
