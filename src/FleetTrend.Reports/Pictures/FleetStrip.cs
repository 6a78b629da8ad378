using System.Globalization;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;

namespace FleetTrend.Reports.Pictures;

/// <summary>
/// The fleet at a glance: one small picture per aircraft, with its open leaks, its hours since the last look and its open calls, each a link to the
/// aircraft. Shapes and numbers say everything, colour nothing. Of a large fleet only those with something to say are drawn, and the rest counted.
/// </summary>
public static class FleetStrip
{
    /// <summary>So many are drawn at most: some 36 kB. A fleet up to this size is drawn whole.</summary>
    public const int MostDrawn = 60;

    private const int Width = 76;
    private const int BarWidth = 66;

    /// <summary>What the picture shows, for the line below.</summary>
    public const string Legend =
        "A box is an aircraft. A drop: leaks open on it. A triangle: calls open on it. The bar: hours flown since its last inspection, full at one look "
        + "interval; a double frame: past it, or never inspected.";

    /// <summary>Draws it; null where there is no aircraft.</summary>
    /// <param name="tails">The aircraft that fly, in the order in which they are shown.</param>
    public static string? Draw(IReadOnlyList<StripTail> tails)
    {
        ArgumentNullException.ThrowIfNull(tails);
        if (tails.Count == 0)
            return null;
        var shown = Shown(tails);
        var html = new HtmlWriter();
        html.Open("ul", "ft-strip", ("aria-label", "Aircraft"));
        foreach (var tail in shown)
            Tail(html, tail);
        html.Close("ul");
        if (shown.Count < tails.Count)
            html.Element("p", "ft-aside", Rest(tails, shown.Count));
        return html.ToString();
    }

    private static IReadOnlyList<StripTail> Shown(IReadOnlyList<StripTail> tails)
    {
        if (tails.Count <= MostDrawn)
            return tails;
        var kept = tails.Where(t => t.IsNotable).OrderByDescending(t => t.OpenLeaks).ThenByDescending(t => t.OpenCalls)
            .ThenByDescending(t => (t.HoursSinceLook ?? double.MaxValue) / t.LookIntervalHours).Take(MostDrawn).ToHashSet();
        return [.. tails.Where(kept.Contains)];
    }

    private static string Rest(IReadOnlyList<StripTail> tails, int shown)
    {
        var quiet = tails.Count(t => !t.IsNotable);
        var left = tails.Count - shown - quiet;
        var more = left > 0 ? $"{NumberWords.Count(left)} more with a leak, a call or a look past its interval, and " : "";
        return $"Not drawn: {more}{NumberWords.Count(quiet)} with no leak, no call and a look within its interval.";
    }

    private static void Tail(HtmlWriter html, StripTail tail)
    {
        html.Open("li", "").Open("a", "", ("href", $"/aircraft/{Uri.EscapeDataString(tail.Registration)}"));
        html.Open("svg", "", ("viewBox", $"0 0 {Width} 52"), ("role", "img")).Element("title", "", Said(tail));
        html.Open("rect", "ft-box", ("x", ".5"), ("y", ".5"), ("width", "75"), ("height", "51")).Close("rect");
        if (tail.IsPast)
            html.Open("rect", "ft-box", ("x", "3"), ("y", "3"), ("width", "70"), ("height", "46")).Close("rect");
        html.Element("text", "ft-number", tail.Registration, ("x", "6"), ("y", "15"));
        if (tail.OpenLeaks > 0)
        {
            html.Open("path", "ft-leak", ("d", "M10 20q-8 12 0 12t0-12")).Close("path");
            html.Element("text", "", NumberWords.Count(tail.OpenLeaks), ("x", "17"), ("y", "32"));
        }

        if (tail.OpenCalls > 0)
        {
            html.Open("path", "ft-call", ("d", "M42 32l6-11 6 11z")).Close("path");
            html.Element("text", "", NumberWords.Count(tail.OpenCalls), ("x", "57"), ("y", "32"));
        }

        if (tail.HoursSinceLook is { } hours)
        {
            var share = Math.Clamp(hours / tail.LookIntervalHours, 0, 1);
            html.Open("rect", "ft-bar", ("x", "5"), ("y", "38"), ("width", (BarWidth * share).ToString("0.#", CultureInfo.InvariantCulture)), ("height", "8")).Close("rect");
        }

        html.Close("svg").Close("a").Close("li");
    }

    private static string Said(StripTail tail)
    {
        List<string> said = [];
        if (tail.OpenLeaks > 0) said.Add(NumberWords.Count(tail.OpenLeaks, "open leak", "open leaks"));
        if (tail.OpenCalls > 0) said.Add(NumberWords.Count(tail.OpenCalls, "open call", "open calls"));
        said.Add(tail.HoursSinceLook is { } hours
            ? $"{NumberWords.Hours(hours)} since its last inspection{(tail.IsPast ? ", past its look interval" : "")}"
            : "never inspected");
        return $"{tail.Registration}: {string.Join(", ", said)}";
    }
}
