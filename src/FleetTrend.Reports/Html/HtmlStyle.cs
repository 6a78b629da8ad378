namespace FleetTrend.Reports.Html;

/// <summary>How reports look, the same in a mail and on a page.</summary>
public static class HtmlStyle
{
    /// <summary>The style sheet: it stands once in the head of a mail, and first in the style sheet of the pages.</summary>
    public static string Sheet { get; } = ReadSheet();

    private static string ReadSheet()
    {
        using var stream = typeof(HtmlStyle).Assembly.GetManifestResourceStream("report.css")
            ?? throw new InvalidOperationException("The style sheet is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
