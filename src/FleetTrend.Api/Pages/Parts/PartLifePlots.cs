using FleetTrend.Api.Access;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.Parts;

/// <summary>The curves of a kind of part as a picture.</summary>
internal static class PartLifePlots
{
    /// <summary>Maps them.</summary>
    public static void MapPartLifePlots(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet("/parts/plot.png", DrawAsync).RequireAuthorization(PageAccess.Name);
    }

    /// <summary>Draws them; not found where the page shows none.</summary>
    private static async Task<IResult> DrawAsync([FromQuery(Name = "type-group")] string? typeGroup, string? kind, ResultReader results, HttpContext context)
    {
        var ct = context.RequestAborted;
        if (typeGroup is null || kind is null || await results.LatestAsync(ct) is not { } published)
            return TypedResults.NotFound();
        var trends = await results.AssembleAsync(published, [Analyses.PartLives], new ResultFilter { TypeGroup = typeGroup, Kind = kind }, ct);
        if (PartLivesSection.Compose(trends, typeGroup, kind).Plot is not { } plot)
            return TypedResults.NotFound();
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return TypedResults.Bytes(plot.RenderPng(), "image/png");
    }
}
