using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Effects;

/// <summary>Whether what was done helped: every action on a flag and every practice change, with its counts.</summary>
internal sealed class EffectsModel(ResultReader results, FreshnessReader freshness) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The effects; null before the first refresh.</summary>
    public string? EffectsHtml { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    public async Task OnGetAsync(CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is { } published)
        {
            var trends = await results.AssembleAsync(published, [Analyses.Effects], new ResultFilter(), ct);
            EffectsHtml = ReportHtml.Render(EffectsSection.Compose(trends) with { Heading = "What was done" });
        }
    }
}
