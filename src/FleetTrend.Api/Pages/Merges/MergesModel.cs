using FleetTrend.Store.DataProblems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Merges;

/// <summary>Every decision about findings that two sources recorded.</summary>
internal sealed class MergesModel(FindingMergeStore merges) : PageModel
{
    private const int MostMerges = 100;

    /// <summary>The decisions, newest first.</summary>
    public IReadOnlyList<StoredMerge> Merges { get; private set; } = [];

    /// <summary>The page of older ones; null where there is none.</summary>
    public string? NextLink { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync([FromQuery(Name = "from")] string? page, CancellationToken ct)
    {
        try
        {
            var listed = await merges.ListAsync(MostMerges, page, ct);
            Merges = listed.Items;
            NextLink = listed.NextPageToken is { } next ? $"/merges?from={Uri.EscapeDataString(next)}" : null;
            return Page();
        }
        catch (FormatException)
        {
            return BadRequest();
        }
    }
}
