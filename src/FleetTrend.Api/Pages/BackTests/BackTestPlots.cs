using FleetTrend.Reports.Plots;
using FleetTrend.Results.Reading;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.BackTests;

/// <summary>The plot of a back-test as a picture.</summary>
internal static class BackTestPlots
{
    /// <summary>Draws it; not found where the page shows none.</summary>
    public static async Task<IResult> DrawAsync(
        [FromQuery(Name = "type-group")] string? typeGroup, ResultReader results, BackTestReader tests, HttpContext context)
    {
        var ct = context.RequestAborted;
        if (await results.LatestAsync(ct) is not { } trends
            || !(await tests.ReadSizesAsync(trends, ct)).Any(g => g.Name == typeGroup && g.Aircraft <= BackTestReader.MostAircraft))
        {
            return TypedResults.NotFound();
        }

        context.Response.Headers.XContentTypeOptions = "nosniff";
        return TypedResults.Bytes(new BackTestPlot(await tests.ReadAsync(trends, typeGroup!, ct)).RenderPng(), "image/png");
    }
}
