using FleetTrend.Intake;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.FailureChances;

/// <summary>Chances before the next look of all aircraft, or of the parts of one.</summary>
internal sealed class FailureChancesModel(ResultReader results, FreshnessReader freshness, NameFilters names) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The aircraft asked for; null for all.</summary>
    public string? Registration { get; private set; }

    /// <summary>What the mark asked for is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>The chances; null before the first refresh.</summary>
    public string? ChancesHtml { get; private set; }

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
                published, [Analyses.FailureChances, Analyses.ChanceCalibrations], new ResultFilter { Registration = Registration }, ct);
            var section = Registration is not null && trends.FailureChances is [var one]
                ? FailureChancesSection.Compose(one, trends.AsOf)
                : FailureChancesSection.Compose(trends);
            ChancesHtml = ReportHtml.Render(section with { Heading = "Chances" });
        }

        return Page();
    }
}
