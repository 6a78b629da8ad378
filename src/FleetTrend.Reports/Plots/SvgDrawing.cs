using System.Text.RegularExpressions;
using FleetTrend.Reports.Fonts;

namespace FleetTrend.Reports.Plots;

/// <summary>What a drawing needs to sit inside a page.</summary>
internal static partial class SvgDrawing
{
    /// <summary>Lets it shrink with the page, and names fonts of like widths for readers who lack ours.</summary>
    public static string Tidy(string svg, int width, int height)
    {
        var start = svg.IndexOf("<svg", StringComparison.Ordinal);
        var body = Root().Replace(svg[start..], "<svg${rest} viewBox=\"0 0 " + width + " " + height + "\">", 1);
        return body.Replace(
            $"font-family=\"{ShippedFonts.Family}\"",
            $"font-family=\"{ShippedFonts.Family}, Verdana, Geneva, sans-serif\"",
            StringComparison.Ordinal);
    }

    [GeneratedRegex("<svg(?<rest>(?:(?! viewBox)[^>])*)>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Root();
}
