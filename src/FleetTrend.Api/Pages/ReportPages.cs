using System.Globalization;
using System.Text;
using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.BackTests;
using FleetTrend.Api.Pages.Schedules;
using FleetTrend.Api.Reports;
using FleetTrend.Api.Schedules;
using FleetTrend.Records.Texts;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Pdf;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Schedules;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>Maps the pages and what they draw on: one style sheet, plots and wall sheets of stored reports, and the mails of old ones.</summary>
public static class ReportPages
{
    private const string Policy =
        "default-src 'none'; style-src 'self'; img-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'self'; "
        + "frame-ancestors 'none'";

    // A stored mail is shown as it was sent, in a frame of its own: it runs nothing, sends nothing and loads nothing.
    private const string MailPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox";

    private static readonly Lazy<string> StyleSheet = new(() => HtmlStyle.Sheet + ReadResource("site.css"));
    private static readonly Lazy<string> Icon = new(() => ReadResource("icon.svg"));

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
            if (endpoint is not RouteEndpointBuilder { RoutePattern.RawText: "sign-in" or "first-sign-in" or "set-password" or "forgot-password" })
                endpoint.Metadata.Add(new AuthorizeAttribute(PageAccess.Name));
        });
        app.MapGet("/site.css", () => TypedResults.Text(StyleSheet.Value, "text/css"));
        app.MapGet("/icon.svg", () => TypedResults.Text(Icon.Value, "image/svg+xml"));
        app.MapGet("/backtest/plot.png", BackTestPlots.DrawAsync).RequireAuthorization(PageAccess.Name);
        app.MapGet("/reports/{id:long}/mail", MailAsync).RequireAuthorization(PageAccess.Name);
        app.MapGet("/schedules/mail", PreviewAsync).RequireAuthorization(PageAccess.Name);
        app.MapGet("/reports/{id:long}/wall.pdf", WallAsync).RequireAuthorization(PageAccess.Name);
        app.MapGet("/reports/{id:long}/plots/{name}", PlotAsync).RequireAuthorization(PageAccess.Name);
    }

    /// <summary>
    /// A stored report as a piece of a page, rendered from its document. One that was stored before documents were kept has its mail alone,
    /// which is shown as it was sent, in a frame.
    /// </summary>
    /// <param name="report">The report.</param>
    /// <param name="shownNotice">The notice that stands on the page already, and is not said twice; null for none.</param>
    public static string Render(StoredReport report, string? shownNotice)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.DocumentJson is { } document
            ? Render(report, ReportDocumentJson.Read(document), shownNotice)
            : $"""
               <h1>Weekly trend report</h1>
               <p>An earlier version wrote this report. It is shown as it was mailed. <a href="{Address(report)}/mail">The mail by itself</a></p>
               <iframe class="mail" title="The report as it was mailed" src="{Address(report)}/mail" sandbox></iframe>
               """;
    }

    /// <summary>
    /// What the mail of a stored report says, as a piece of a page that links to the whole; all of one that has its mail alone.
    /// </summary>
    /// <param name="report">The report.</param>
    /// <param name="shownNotice">As of <see cref="Render(StoredReport, string)"/>.</param>
    public static string RenderOpening(StoredReport report, string? shownNotice)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.DocumentJson is not { } stored)
            return Render(report, shownNotice);
        var document = ReportDocumentJson.Read(stored);
        IReadOnlyList<ReportSection> opening = document.Brief.Count > 0 ? document.Brief : [.. document.Sections.Take(1)];
        return $"""
                {Render(report, document with { Brief = [], Sections = opening }, shownNotice)}
                <p><a href="{Address(report)}">The whole report</a>, or <a href="{Address(report)}/wall.pdf">two pages for the wall</a> (PDF)</p>
                """;
    }

    private static string Render(StoredReport report, ReportDocument document, string? shownNotice) => ReportHtml.Render(
        document with { Notice = document.Notice == shownNotice ? null : document.Notice, Sections = [.. document.Brief, .. document.Sections] },
        name => $"{Address(report)}/plots/{Uri.EscapeDataString(name)}");

    private static string Address(StoredReport report) => string.Create(CultureInfo.InvariantCulture, $"/reports/{report.ReportId}");

    private static void AddHeaders(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
    }

    private static async Task<IResult> MailAsync(long id, ReportStore reports, HttpContext context)
    {
        if (await reports.GetAsync(id, context.RequestAborted) is not { } report)
            return TypedResults.NotFound();
        return Mail(report, context);
    }

    private static ContentHttpResult Mail(StoredReport report, HttpContext context)
    {
        AddHeaders(context.Response.Headers);
        context.Response.Headers.ContentSecurityPolicy = MailPolicy;
        // Characters that hide or turn text, which earlier versions let through, are written out.
        return TypedResults.Text(ReportMessages.HtmlWithPlots(report with { Html = ForeignText.WithBreaks(report.Html) }), "text/html", Encoding.UTF8);
    }

    private static async Task<IResult> PreviewAsync(string name, ScheduleStore schedules, ReportPreviews previews, HttpContext context)
    {
        var reader = context.Features.Get<Caller>() ?? Caller.Nobody;
        if (name.Contains('\0') || !CallScopes.Find(PreviewModel.Previewing).Any(reader.Has)
            || await schedules.FindAsync(name, context.RequestAborted) is not { } schedule
            || await previews.ReadAsync(schedule, context.RequestAborted) is not { } preview)
        {
            return TypedResults.NotFound();
        }

        return Mail(preview.Report, context);
    }

    private static async Task<IResult> WallAsync(long id, ReportStore reports, HttpContext context)
    {
        if (await reports.GetAsync(id, context.RequestAborted) is not { DocumentJson: { } document } report)
            return TypedResults.NotFound();
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return TypedResults.Bytes(ReportPdf.Render(ReportDocumentJson.Read(document), report.AsOf), "application/pdf");
    }

    private static async Task<IResult> PlotAsync(long id, string name, ReportStore reports, HttpContext context)
    {
        if (await reports.GetAsync(id, context.RequestAborted) is not { } report || !report.Plots.TryGetValue(name, out var png))
            return TypedResults.NotFound();
        // A stored report never changes.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return TypedResults.Bytes(png, "image/png");
    }

    private static string ReadResource(string name)
    {
        using var stream = typeof(ReportPages).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
