using FleetTrend.Reports.Weekly;

namespace FleetTrend.Reports.Html;

/// <summary>A report as the HTML part of a mail, and that part again as a piece of a page.</summary>
public static class MailHtml
{
    private const string BodyStart = "<body style=\"" + HtmlStyle.Page + "\">\n";
    private const string BodyEnd = "</body>\n</html>\n";

    /// <summary>The whole document; plots are <c>cid:NAME</c>.</summary>
    public static string Render(WeeklyReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var head = new HtmlWriter()
            .Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Raw("<meta name=\"color-scheme\" content=\"light only\">\n")
            .Element("title", string.Empty, report.Title)
            .Raw("<style>" + HtmlStyle.Sheet + "</style>\n</head>\n");
        return head + BodyStart + ReportHtml.Render(report, PlotPlacement.ContentId) + BodyEnd;
    }

    /// <summary>What stands in the body of a document that <see cref="Render"/> made, with each plot at an address of the caller's.</summary>
    /// <param name="html">The document.</param>
    /// <param name="plotUrl">Address of a plot by its name.</param>
    /// <param name="plots">Names of the plots.</param>
    /// <exception cref="ArgumentException">The document is not of our making.</exception>
    public static string Body(string html, IEnumerable<string> plots, Func<string, string> plotUrl)
    {
        ArgumentNullException.ThrowIfNull(html);
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(plotUrl);
        var start = html.IndexOf("<body", StringComparison.Ordinal);
        var inner = start < 0 ? -1 : html.IndexOf('>', start) + 1;
        var end = html.LastIndexOf("</body>", StringComparison.Ordinal);
        if (inner <= 0 || end < inner) throw new ArgumentException("The document has no body.", nameof(html));
        var body = html[inner..end];
        return plots.Aggregate(body, (text, name) => text.Replace($"src=\"cid:{name}\"", $"src=\"{plotUrl(name)}\"", StringComparison.Ordinal));
    }
}
