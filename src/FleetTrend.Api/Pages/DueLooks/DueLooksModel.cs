using FleetTrend.Intake;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.DueLooks;

/// <summary>When each aircraft is due, or what is due on one.</summary>
internal sealed class DueLooksModel(ResultReader results, FreshnessReader freshness, NameFilters names) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The aircraft asked for; null for all.</summary>
    public string? Registration { get; private set; }

    /// <summary>What the mark asked for is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>What is due; null before the first refresh.</summary>
    public string? DueHtml { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync([FromQuery] string? registration, CancellationToken ct)
    {
        Registration = string.IsNullOrEmpty(registration) ? null : registration.ToUpperInvariant();
        Freshness = await freshness.ReadAsync(ct);
        UnknownMark = Registration is null ? null : await names.OfRegistrationAsync(Registration, ct);
        if (UnknownMark is not null)
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        if (await results.LatestAsync(ct) is { } published)
        {
            var trends = await results.AssembleAsync(
                published, [Analyses.Fleet, Analyses.DueLooks], new ResultFilter { Registration = Registration }, ct);
            var section = Registration is not null && trends.DueLooks is [var one]
                ? DueLooksSection.Compose(one, trends.AsOf)
                : DueLooksSection.Compose(trends);
            DueHtml = ReportHtml.Render(section with { Heading = "Looks that are due" });
        }

        return Page();
    }
}
