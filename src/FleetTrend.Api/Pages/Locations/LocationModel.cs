using FleetTrend.Api.Trends;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Locations;

/// <summary>One location on all aircraft of a type group: is it bad everywhere, and on whom?</summary>
internal sealed class LocationModel(ResultReader results, FreshnessReader freshness) : PageModel
{
    /// <summary>The type group.</summary>
    public string TypeGroup { get; private set; } = "";

    /// <summary>The location and the type group.</summary>
    public string Heading { get; private set; } = "";

    /// <summary>Whether it is bad everywhere, in a sentence; null where no such location is known.</summary>
    public string? Statement { get; private set; }

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The sections as HTML.</summary>
    public string SectionsHtml { get; private set; } = "";

    /// <summary>Rows behind each rate: the condition, and where they are.</summary>
    public IReadOnlyList<(string What, string Address)> Rows { get; private set; } = [];

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync(string typeGroup, string location, CancellationToken ct)
    {
        (TypeGroup, Heading) = (typeGroup, $"{FirstLetter.Capital(LocationWords.Name(location))}, {typeGroup}");
        Freshness = await freshness.ReadAsync(ct);
        var here = new ResultFilter { TypeGroup = typeGroup, Location = location };
        if (await results.LatestAsync(ct) is not { } published
            || await results.AssembleAsync(published, [Analyses.Rates, Analyses.Levels], here, ct) is not { Rates: [var first, ..] } trends)
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        var kind = new ResultFilter { TypeGroup = typeGroup, Kind = first.Kind };
        trends = trends with { Rates = await results.ReadAsync(published, Analyses.Rates, kind, ct) };
        Statement = LocationsSection.StatementOfOne(trends, location);
        SectionsHtml = string.Concat(LocationsSection.ComposeOne(trends, location).Select(ReportHtml.Render));
        Rows =
        [
            .. trends.Rates.Where(r => r.Location == location && r.Rate.Events > 0).OrderBy(r => r.Condition).Select(r => (
                ConditionWords.Many(r.Condition),
                $"/traces/rate.csv?typeGroup={Uri.EscapeDataString(typeGroup)}&location={Uri.EscapeDataString(location)}&condition={TraceQuery.NameOf(r.Condition)}")),
        ];
        return Page();
    }
}
