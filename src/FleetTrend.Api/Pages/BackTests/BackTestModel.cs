using FleetTrend.Reports.Plots;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends.BackTests;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.BackTests;

/// <summary>When the calls of a type group would have come, beside alert levels.</summary>
internal sealed class BackTestModel(ResultReader results, FreshnessReader freshness, BackTestReader tests) : PageModel
{
    /// <summary>So many calls are listed.</summary>
    public const int MostCalls = 200;

    /// <summary>How fresh the numbers are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>Every type group with aircraft, and how many.</summary>
    public IReadOnlyList<(string Name, int Aircraft)> TypeGroups { get; private set; } = [];

    /// <summary>The type group that is shown, or asked for in vain; null where there is none.</summary>
    public string? TypeGroup { get; private set; }

    /// <summary>Whether the type group that is asked for is there.</summary>
    public bool IsKnown => TypeGroups.Any(g => g.Name == TypeGroup);

    /// <summary>The back-test; null where there is nothing to replay, or too much for a page.</summary>
    public BackTest? Test { get; private set; }

    /// <summary>Its plot; null as it is.</summary>
    public BackTestPlot? Plot => Test is null ? null : new BackTestPlot(Test);

    /// <summary>Flags, of which other methods share some.</summary>
    public int Flags => Test!.Methods.First(m => m.Name == BackTestMethod.Flag).Calls;

    /// <summary>Watches, of which other methods share some.</summary>
    public int Watches => Test!.Methods.First(m => m.Name == BackTestMethod.Watch).Calls;

    /// <summary>The address of a type group's page.</summary>
    public static string Link(string typeGroup) => $"/backtest?type-group={Uri.EscapeDataString(typeGroup)}";

    /// <summary>Reads what the page shows.</summary>
    /// <param name="typeGroup">Which type group; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync([FromQuery(Name = "type-group")] string? typeGroup, CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } trends)
            return;
        TypeGroups = await tests.ReadSizesAsync(trends, ct);
        TypeGroup = typeGroup ?? (TypeGroups.Count > 0 ? TypeGroups[0].Name : null);
        if (TypeGroup is not { } wanted)
            return;
        if (!IsKnown)
            Response.StatusCode = StatusCodes.Status404NotFound;
        else if (TypeGroups.First(g => g.Name == wanted).Aircraft <= BackTestReader.MostAircraft)
            Test = await tests.ReadAsync(trends, wanted, ct);
    }
}
