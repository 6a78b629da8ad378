using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Parts;

/// <summary>One kind of part of a type group: its curve, its bases, and what differs between them.</summary>
internal sealed class PartModel(ResultReader results, FreshnessReader freshness) : PageModel
{
    /// <summary>The type group.</summary>
    public string TypeGroup { get; private set; } = "";

    /// <summary>The kind and the type group.</summary>
    public string Heading { get; private set; } = "";

    /// <summary>Whether any life of it is known.</summary>
    public bool IsKnown { get; private set; }

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>The section as HTML.</summary>
    public string SectionsHtml { get; private set; } = "";

    /// <summary>Where the lives behind it are.</summary>
    public string RowsAddress { get; private set; } = "";

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync(string typeGroup, string kind, CancellationToken ct)
    {
        (TypeGroup, Heading) = (typeGroup, $"{FirstLetter.Capital(LocationWords.Kind(null, kind))}, {typeGroup}");
        Freshness = await freshness.ReadAsync(ct);
        var query = $"type-group={Uri.EscapeDataString(typeGroup)}&kind={Uri.EscapeDataString(kind)}";
        var filter = new ResultFilter { TypeGroup = typeGroup, Kind = kind };
        Analysis[] shown = [Analyses.PartLives, Analyses.PartNumbers, Analyses.RenewalAges];
        if (await results.LatestAsync(ct) is not { } published
            || await results.AssembleAsync(published, shown, filter, ct) is not { PartLives: [var first, ..] } trends)
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        IsKnown = true;
        Heading = $"{FirstLetter.Capital(LocationWords.Kind(first.KindTitle, kind))}, {typeGroup}";
        RowsAddress = $"/traces/lives.csv?typeGroup={Uri.EscapeDataString(typeGroup)}&kind={Uri.EscapeDataString(kind)}";
        SectionsHtml = ReportHtml.Render(PartLivesSection.Compose(trends, typeGroup, kind).Section, _ => $"/parts/plot.png?{query}")
            + (trends.PartNumbers.Count > 0 ? ReportHtml.Render(PartNumbersSection.Compose(trends)) : "")
            + ReportHtml.Render(RenewalAgesSection.Compose(trends, typeGroup, kind));
        return Page();
    }
}
