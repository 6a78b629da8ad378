using System.Globalization;
using FleetTrend.Api.DataProblems;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Contracts.V1;
using FleetTrend.Store.DataProblems;
using Microsoft.AspNetCore.Mvc;
using FindingName = FleetTrend.Contracts.V1.FindingName;

namespace FleetTrend.Api.Pages.Merges;

/// <summary>One decision about two findings, and the form that takes it back.</summary>
internal sealed class MergeModel(FindingMergeStore merges, DataProblemAnswers answers) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Unmerge = "unmerge";

    /// <summary>The decision; null where there is none of that number.</summary>
    public StoredMerge? Merge { get; private set; }

    /// <summary>The latest decision about the same finding.</summary>
    public StoredMerge? Latest { get; private set; }

    /// <summary>Whether it holds and can be taken back.</summary>
    public bool Holds => Merge is { IsMerged: true } && Latest?.MergeId == Merge.MergeId;

    /// <summary>Shows a decision.</summary>
    public Task<IActionResult> OnGetAsync(long id, CancellationToken ct) => ShowAsync(id, ct);

    /// <summary>Takes it back.</summary>
    public async Task<IActionResult> OnPostUnmergeAsync(long id, CancellationToken ct)
    {
        var merge = await merges.GetAsync(id, ct);
        var request = new UnmergeFindingsRequest { DecidedBy = Reader.Name, Note = Typed("note") };
        if (merge is not null)
            request.Merged = new FindingName { Source = merge.Merged.Source, SourceRecordId = merge.Merged.SourceRecordId };
        return await AnswerAsync(Unmerge, DataProblemAnswers.Unmerging, caller => answers.UnmergeAsync(request, caller, ct)) is { } undone
            ? LocalRedirect($"/merges/{undone.MergeId.ToString(CultureInfo.InvariantCulture)}?done={Unmerge}")
            : await ShowAsync(id, ct);
    }

    private async Task<IActionResult> ShowAsync(long id, CancellationToken ct)
    {
        Merge = await merges.GetAsync(id, ct);
        if (Merge is not null)
            Latest = await merges.LatestAsync(Merge.Merged, ct);
        else if (NotLetIn is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        return Page();
    }
}
