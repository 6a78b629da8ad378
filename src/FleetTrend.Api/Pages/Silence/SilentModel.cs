using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Silence;

/// <summary>Aircraft of which nothing comes any more.</summary>
internal sealed class SilentModel(ResultReader results, FreshnessReader freshness) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The silences; null before the first refresh.</summary>
    public string? SilencesHtml { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    public async Task OnGetAsync(CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is { } published)
        {
            var trends = await results.AssembleAsync(published, [Analyses.Fleet, Analyses.Silence], new ResultFilter(), ct);
            SilencesHtml = ReportHtml.Render(SilenceSection.Compose(trends) with { Heading = "Silent aircraft" });
        }
    }
}
