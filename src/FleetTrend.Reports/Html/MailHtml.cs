using FleetTrend.Reports.Blocks;

namespace FleetTrend.Reports.Html;

/// <summary>A report as the HTML part of a mail.</summary>
public static class MailHtml
{
    /// <summary>The whole HTML document; plots are <c>cid:NAME</c>.</summary>
    public static string Render(ReportDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return new HtmlWriter()
            .Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Raw("<meta name=\"color-scheme\" content=\"light dark\">\n")
            .Element("title", "", document.Title)
            .Raw("<style>" + HtmlStyle.Sheet + "</style>\n</head>\n")
            .Raw("<body>\n")
            .Raw(Preview(document))
            .Raw(ReportHtml.Render(document, name => "cid:" + name))
            .Raw("</body>\n</html>\n")
            .ToString();
    }

    // Seen in the list of a mailbox, and not in the mail.
    private static string Preview(ReportDocument document) => document.Preview.Length == 0
        ? ""
        : new HtmlWriter().Raw("<div style=\"display:none;max-height:0;overflow:hidden\">").Text(document.Preview).Raw("</div>\n").ToString();
}
