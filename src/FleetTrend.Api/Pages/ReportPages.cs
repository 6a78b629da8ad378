using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Records.Texts;
using FleetTrend.Reports.Html;
using FleetTrend.Store.Reports;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>Maps the pages and what they draw on: one style sheet, and the plots of stored reports.</summary>
public static class ReportPages
{
    /// <summary>The base of a report of the whole fleet, as the store names it.</summary>
    public const string WholeFleet = "*";

    private const string Policy =
        "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private static readonly Lazy<string> StyleSheet = new(ReadStyleSheet);

    /// <summary>Maps all of them. Pages carry headers that let nothing run and nothing load from elsewhere.</summary>
    public static void MapReportPages(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.Use(static (context, next) =>
        {
            if (context.GetEndpoint()?.Metadata.GetMetadata<PageActionDescriptor>() is not null) AddHeaders(context.Response.Headers);
            return next(context);
        });
        app.MapRazorPages().Add(endpoint =>
        {
            if (endpoint is not RouteEndpointBuilder { RoutePattern.RawText: "sign-in" })
                endpoint.Metadata.Add(new AuthorizeAttribute(PageAccess.Name));
        });
        app.MapGet("/site.css", () => Results.Text(StyleSheet.Value, "text/css"));
        app.MapGet("/reports/{id:long}/plots/{name}", PlotAsync).RequireAuthorization(PageAccess.Name);
    }

    /// <summary>
    /// A stored report as a piece of a page; characters that hide or turn text, which earlier versions let through, are written
    /// out.
    /// </summary>
    public static string Body(StoredReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return MailHtml.Body(
            ForeignText.WithBreaks(report.Html), report.Plots.Keys,
            name => string.Create(CultureInfo.InvariantCulture, $"/reports/{report.ReportId}/plots/{Uri.EscapeDataString(name)}"));
    }

    private static void AddHeaders(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
    }

    private static async Task<IResult> PlotAsync(long id, string name, ReportStore reports, HttpContext context)
    {
        if (await reports.GetAsync(id, context.RequestAborted) is not { } report || !report.Plots.TryGetValue(name, out var png))
            return Results.NotFound();
        // A stored report never changes.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return Results.Bytes(png, "image/png");
    }

    private static string ReadStyleSheet()
    {
        using var stream = typeof(ReportPages).Assembly.GetManifestResourceStream("site.css")
            ?? throw new InvalidOperationException("The style sheet is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
