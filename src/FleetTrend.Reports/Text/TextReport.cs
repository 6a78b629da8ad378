using FleetTrend.Reports.Blocks;

namespace FleetTrend.Reports.Text;

/// <summary>A report as plain text, at most 78 columns wide.</summary>
public static class TextReport
{
    /// <summary>Widest line, in characters.</summary>
    public const int Columns = 78;

    /// <summary>Renders a report; lines end with <c>\n</c>.</summary>
    public static string Render(ReportDocument report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new TextLines();
        text.Wrapped(report.Title.ToUpperInvariant());
        text.Blank();
        if (report.Notice is { } notice)
        {
            text.Wrapped($"*** {notice} ***");
            text.Blank();
        }

        text.Wrapped(report.Caution);
        foreach (var section in report.Sections)
        {
            text.Blank();
            text.Wrapped(section.Heading.ToUpperInvariant());
            text.Wrapped(new string('-', Math.Min(Columns, section.Heading.Length)));
            var blocks = new TextBlocks(text);
            foreach (var block in section.Blocks) blocks.Write(block, indent: 0);
        }

        if (report.PagesUrl is { } pages)
        {
            text.Blank();
            text.Wrapped($"More on the pages: {pages.AbsoluteUri}");
        }

        text.Blank();
        foreach (var (name, value) in report.Origin) text.Wrapped($"{name}: {value}", hanging: 2);
        return text.ToString();
    }
}
