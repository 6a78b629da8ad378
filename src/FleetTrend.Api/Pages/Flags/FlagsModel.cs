using FleetTrend.Records.Flags;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Flags;

/// <summary>The list of flags.</summary>
internal sealed class FlagsModel(FlagStore flags, ResultReader results, FreshnessReader freshness) : PageModel
{
    private const int MostFlags = 100;

    /// <summary>Whether closed flags are shown.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>How fresh the flags are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The flags as HTML.</summary>
    public string FlagsHtml { get; private set; } = "";

    /// <summary>The page of older flags; null where there is none.</summary>
    public string? NextLink { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    /// <param name="state"><c>closed</c>; anything else shows those that are not.</param>
    /// <param name="page">Token of a page of older flags; empty for the newest.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IActionResult> OnGetAsync(string? state, [FromQuery(Name = "from")] string? page, CancellationToken ct)
    {
        IsClosed = string.Equals(state, "closed", StringComparison.OrdinalIgnoreCase);
        Page<StoredFlag> listed;
        try
        {
            listed = await flags.ListAsync(IsClosed ? FlagState.Closed : null, null, MostFlags, page, ct);
        }
        catch (FormatException)
        {
            return BadRequest();
        }

        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } trends)
            return Page();
        var now = await results.AssembleAsync(trends, [], new ResultFilter(), ct);
        FlagsHtml = ReportHtml.Render(FlagSection.Compose(
            now, IsClosed ? "Closed" : "Not closed", [.. listed.Items.Select(FlagLines.ToRow)]));
        if (listed.NextPageToken is { } next)
            NextLink = $"/flags?state={(IsClosed ? "closed" : "open")}&from={Uri.EscapeDataString(next)}";
        return Page();
    }
}
