using System.Globalization;
using System.Text.RegularExpressions;
using FleetTrend.Reports.Fonts;

namespace FleetTrend.Reports.Plots;

/// <summary>What a drawing needs to sit inside a page.</summary>
internal static partial class SvgDrawing
{
    /// <summary>
    /// Lets it shrink with the page, names fonts of like widths for readers who lack ours, and gives its clip paths
    /// identifiers of its own: the drawing library counts them through the whole process.
    /// </summary>
    public static string Tidy(string svg, string name, int width, int height)
    {
        var start = svg.IndexOf("<svg", StringComparison.Ordinal);
        var body = Root().Replace(svg[start..], "<svg${rest} viewBox=\"0 0 " + width + " " + height + "\" style=\"max-width:100%;height:auto\">", 1);
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        body = ClipPath().Replace(body, m =>
        {
            if (!numbers.TryGetValue(m.Value, out var number)) numbers[m.Value] = number = numbers.Count + 1;
            return "clip-" + name + "-" + number.ToString(CultureInfo.InvariantCulture);
        });
        return body.Replace(
            $"font-family=\"{ShippedFonts.Family}\"",
            $"font-family=\"{ShippedFonts.Family}, Verdana, Geneva, sans-serif\"",
            StringComparison.Ordinal);
    }

    [GeneratedRegex("<svg(?<rest>(?:(?! viewBox)[^>])*)>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Root();

    [GeneratedRegex("(?<=id=\"|url\\(#)cl_[0-9a-f]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ClipPath();
}
