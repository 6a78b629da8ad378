using FleetTrend.Intake;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>A page that shows one section of the latest trends, of all aircraft or of one.</summary>
/// <param name="title">Its heading.</param>
/// <param name="lead">What it answers, in a sentence or two.</param>
/// <param name="path">Its address.</param>
/// <param name="results">Published results.</param>
/// <param name="freshness">How fresh they are.</param>
/// <param name="names">Which marks are registered.</param>
internal abstract class SectionModel(string title, string lead, string path, ResultReader results, FreshnessReader freshness, NameFilters names) : PageModel
{
    /// <summary>Its heading.</summary>
    public string Title => title;

    /// <summary>What it answers.</summary>
    public string Lead => lead;

    /// <summary>Its address, where it shows all aircraft.</summary>
    public string Address => path;

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The aircraft asked for; null for all.</summary>
    public string? Registration { get; private set; }

    /// <summary>What the mark asked for is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>The section as HTML; null before the first refresh.</summary>
    public string? SectionHtml { get; private set; }

    /// <summary>Published results, for a page that reads them otherwise.</summary>
    protected ResultReader Results => results;

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync([FromQuery] string? registration, CancellationToken ct)
    {
        Registration = string.IsNullOrEmpty(registration) ? null : registration.ToUpperInvariant();
        Freshness = await freshness.ReadAsync(ct);
        UnknownMark = Registration is null ? null : await names.OfRegistrationAsync(Registration, ct);
        if (UnknownMark is not null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        else if (await results.LatestAsync(ct) is { } published)
            SectionHtml = ReportHtml.Render(Compose(await ReadAsync(published, new ResultFilter { Registration = Registration }, ct), Registration));
        return Page();
    }

    /// <summary>Reads the trends behind the section.</summary>
    protected abstract Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct);

    /// <summary>Writes the section, of all aircraft or of one.</summary>
    protected abstract ReportSection Compose(TrendSnapshot trends, string? registration);
}
