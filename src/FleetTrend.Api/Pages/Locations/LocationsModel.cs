using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Pictures;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Locations;

/// <summary>Where on the aircraft of a type group a condition arises: an outline with counts, and each location beside the others of its kind.</summary>
internal sealed class LocationsModel(ResultReader results, ResultStore store, FreshnessReader freshness) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>Every type group with results, by name.</summary>
    public IReadOnlyList<string> TypeGroups { get; private set; } = [];

    /// <summary>The type group that is shown, or asked for in vain; null where there is none.</summary>
    public string? TypeGroup { get; private set; }

    /// <summary>Conditions to choose from.</summary>
    public IReadOnlyList<Condition> Conditions { get; private set; } = [];

    /// <summary>The condition that is shown.</summary>
    public Condition Condition { get; private set; } = Condition.Crack;

    /// <summary>Which location stands out, in a sentence; null where there is nothing to show.</summary>
    public string? Statement { get; private set; }

    /// <summary>The outline as SVG.</summary>
    public string? Outline { get; private set; }

    /// <summary>The list as HTML.</summary>
    public string? LocationsHtml { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    /// <param name="typeGroup">Which type group; null for the first.</param>
    /// <param name="condition">Which condition; cracks where it is none of them.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync([FromQuery(Name = "type-group")] string? typeGroup, string? condition, CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } published)
            return;
        TypeGroups = [.. (await store.ReadSetsAsync(published.SetIds, ct)).Select(s => s.TypeGroup).Order(StringComparer.Ordinal)];
        TypeGroup = typeGroup ?? (TypeGroups.Count > 0 ? TypeGroups[0] : null);
        if (TypeGroup is not { } wanted)
            return;
        if (!TypeGroups.Contains(wanted, StringComparer.Ordinal))
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var trends = await results.AssembleAsync(published, [Analyses.Rates, Analyses.Levels], new ResultFilter { TypeGroup = wanted }, ct);
        Conditions = [.. trends.Rates.Where(r => r.Location is not null).Select(r => r.Condition).Distinct().Order()];
        if (Enum.TryParse<Condition>(condition, ignoreCase: true, out var asked) && Conditions.Contains(asked))
            Condition = asked;
        Statement = LocationsSection.Statement(trends, Condition);
        Outline = SystemOutline.Draw(
            $"{FirstLetter.Capital(ConditionWords.Many(Condition))} by location, {wanted}",
            [.. trends.Rates.Where(r => r.Location is not null && r.Condition == Condition).OrderBy(r => r.Location, StringComparer.Ordinal)
                .Select(r => new OutlineSpot(r.Location!, r.Rate.Events, LocationLink.Path(wanted, r.Location!)))]);
        LocationsHtml = ReportHtml.Render(LocationsSection.Compose(trends, Condition));
    }
}
