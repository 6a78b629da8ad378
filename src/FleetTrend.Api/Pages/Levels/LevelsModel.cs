using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Levels;

/// <summary>Who runs high in a type group, most probably high first.</summary>
internal sealed class LevelsModel(ResultReader results, ResultStore store, FreshnessReader freshness) : PageModel
{
    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>Every type group with results, by name.</summary>
    public IReadOnlyList<string> TypeGroups { get; private set; } = [];

    /// <summary>The type group that is shown, or asked for in vain; null where there is none.</summary>
    public string? TypeGroup { get; private set; }

    /// <summary>The levels; null where there is nothing to show.</summary>
    public string? LevelsHtml { get; private set; }

    /// <summary>The address of a type group's page.</summary>
    public static string Link(string typeGroup) => $"/levels?type-group={Uri.EscapeDataString(typeGroup)}";

    /// <summary>Reads what the page shows.</summary>
    /// <param name="typeGroup">Which type group; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync([FromQuery(Name = "type-group")] string? typeGroup, CancellationToken ct)
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

        var levels = await results.ReadAsync(published, Analyses.Levels, new ResultFilter { TypeGroup = wanted }, ct);
        LevelsHtml = ReportHtml.Render(LevelsSection.Compose(wanted, published.AsOf, [.. Analyses.Levels.Order(levels)]));
    }
}
