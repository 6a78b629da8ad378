using FleetTrend.Reports.Blocks;

namespace FleetTrend.Reports.Html;

/// <summary>A report as HTML that stands between the head and the foot of a document: one frame, styled by <see cref="HtmlStyle.Sheet"/>.</summary>
public static class ReportHtml
{
    /// <summary>Renders a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="plotAddress">Address of a plot by its name.</param>
    public static string Render(ReportDocument report, Func<string, string> plotAddress)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(plotAddress);
        var html = new HtmlWriter();
        html.Open("div", "ft-frame");
        html.Element("h1", "", report.Title);
        if (report.Notice is { } notice) html.Element("p", "ft-notice", notice);
        html.Element("p", "ft-caution", report.Caution);
        foreach (var section in report.Sections) Section(html, section, plotAddress);
        if (report.PagesUrl is { } pages)
        {
            html.Open("p", "ft-aside").Text("More on the pages: ");
            html.Open("a", "", ("href", pages.AbsoluteUri)).Text(pages.AbsoluteUri).Close("a").Close("p");
        }

        html.Open("p", "ft-aside ft-origin");
        html.Text(string.Join(" · ", report.Origin.Select(o => $"{o.Key}: {o.Value}")));
        html.Close("p");
        return html.Close("div").ToString();
    }

    /// <summary>Renders one section by itself, for a page that has a frame of its own.</summary>
    /// <param name="section">The section, without plots: a page of the moment has none stored.</param>
    public static string Render(ReportSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return Render(section, name => throw new ArgumentException($"The section has a plot, {name}.", nameof(section)));
    }

    /// <summary>Renders one section with its plots by itself.</summary>
    /// <param name="section">The section.</param>
    /// <param name="plotAddress">Address of a plot by its name.</param>
    public static string Render(ReportSection section, Func<string, string> plotAddress)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(plotAddress);
        var html = new HtmlWriter();
        Section(html, section, plotAddress);
        return html.ToString();
    }

    private static void Section(HtmlWriter html, ReportSection section, Func<string, string> plotAddress)
    {
        var heading = "ft-" + section.Name;
        html.Open("section", "", ("aria-labelledby", heading));
        html.Element("h2", "", section.Heading, ("id", heading));
        var blocks = new HtmlBlocks(html, plotAddress);
        foreach (var block in section.Blocks) blocks.Write(block);
        html.Close("section");
    }
}
