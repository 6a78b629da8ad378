using System.Globalization;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;
using FleetTrend.Trends.LookLists;

namespace FleetTrend.Reports.Pictures;

/// <summary>
/// An aircraft along its flight hours as SVG: a row per location with a finding, the looks as ticks, findings and what was done as marks that are told
/// apart by shape, and the hours between two findings written between them.
/// </summary>
public static class AircraftTimeline
{
    private const int Width = 720;
    private const int Left = 170;
    private const int Right = 16;
    private const int Top = 26;
    private const int RowHeight = 30;
    private const int MostRows = 14;
    private const int MostTicks = 6;

    /// <summary>Narrower than this, hours between two findings would run into the marks.</summary>
    private const double LeastForHours = 46;

    /// <summary>Draws it; null where no location has a finding or no hours are known.</summary>
    public static string? Draw(LookList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (list.LatestHours is not { } end)
            return null;
        List<LookListLine> rows = [.. list.Lines.Where(l => l.Before.Count > 0)
            .OrderByDescending(l => l.Before.Count).ThenByDescending(l => l.Before[0].FoundHours).Take(MostRows)];
        if (rows.Count == 0)
            return null;
        var start = rows.Min(r => r.LookHours.Concat(r.Before.Select(b => b.FoundHours)).Min());
        var scale = new Scale(start, Math.Max(end, start + 1));
        var height = Top + (rows.Count * RowHeight) + 30;
        var svg = new HtmlWriter();
        svg.Open("svg", "ft-timeline", ("viewBox", $"0 0 {Width} {height}"), ("role", "img"), ("aria-labelledby", "ft-timeline-title ft-timeline-text"));
        svg.Element("title", "", $"{list.Registration} along its flight hours", ("id", "ft-timeline-title"));
        svg.Element("desc", "", string.Join(". ", rows.Select(r => $"{LocationWords.Name(r.Location)}: {LookListWords.Before(r)}")), ("id", "ft-timeline-text"));
        Axis(svg, scale, rows.Count);
        foreach (var (index, row) in rows.Index())
            Row(svg, scale, row, Top + (index * RowHeight) + (RowHeight / 2));
        svg.Close("svg");
        return svg.ToString();
    }

    /// <summary>What the marks mean, for the line below.</summary>
    public const string Legend =
        "Flight hours from left to right. Ticks: looked at. Filled circle: found. Diamond: welded. Square: replaced. Ring: stop-drilled. Small dot: another action, or left open. "
        + "Numbers: hours from one finding to the next.";

    private static void Axis(HtmlWriter svg, Scale scale, int rows)
    {
        var step = Step(scale.To - scale.From);
        var bottom = Top + (rows * RowHeight);
        for (var hours = Math.Ceiling(scale.From / step) * step; hours <= scale.To; hours += step)
        {
            var x = Number(scale.X(hours));
            svg.Open("line", "ft-grid", ("x1", x), ("x2", x), ("y1", $"{Top - 6}"), ("y2", $"{bottom}")).Close("line");
            svg.Element("text", "ft-axis", NumberWords.Hours(hours), ("x", x), ("y", $"{bottom + 18}"), ("text-anchor", "middle"));
        }
    }

    private static void Row(HtmlWriter svg, Scale scale, LookListLine row, int y)
    {
        svg.Element("text", "ft-place", FirstLetter.Capital(LocationWords.Name(row.Location)), ("x", $"{Left - 10}"), ("y", $"{y + 4}"), ("text-anchor", "end"));
        svg.Open("line", "ft-row", ("x1", $"{Left}"), ("x2", $"{Width - Right}"), ("y1", $"{y}"), ("y2", $"{y}")).Close("line");
        foreach (var look in row.LookHours)
            svg.Open("line", "ft-look", ("x1", Number(scale.X(look))), ("x2", Number(scale.X(look))), ("y1", $"{y - 3}"), ("y2", $"{y + 3}")).Close("line");
        double? last = null;
        foreach (var seen in row.Before.Reverse())
        {
            var x = scale.X(seen.FoundHours);
            if (last is { } before && scale.X(seen.FoundHours) - scale.X(before) >= LeastForHours)
            {
                svg.Element(
                    "text", "ft-between", NumberWords.Hours(seen.FoundHours - before),
                    ("x", Number((scale.X(before) + x) / 2)), ("y", $"{y - 6}"), ("text-anchor", "middle"));
            }

            svg.Open("circle", "ft-found", ("cx", Number(x)), ("cy", $"{y}"), ("r", "5")).Close("circle");
            if (seen is { Action: { } action, ActionHours: { } at })
                Mark(svg, action, Math.Max(scale.X(at), x + 9), y);
            last = seen.FoundHours;
        }
    }

    private static void Mark(HtmlWriter svg, ActionKind action, double x, int y)
    {
        switch (action)
        {
            case ActionKind.WeldRepaired:
                svg.Open("path", "ft-done", ("d", $"M{Number(x)} {y - 5} l5 5 l-5 5 l-5 -5 z")).Close("path");
                break;
            case ActionKind.Replaced:
                svg.Open("rect", "ft-done", ("x", Number(x - 4)), ("y", $"{y - 4}"), ("width", "8"), ("height", "8")).Close("rect");
                break;
            case ActionKind.StopDrilled:
                svg.Open("circle", "ft-ring", ("cx", Number(x)), ("cy", $"{y}"), ("r", "4")).Close("circle");
                break;
            default:
                svg.Open("circle", "ft-done", ("cx", Number(x)), ("cy", $"{y}"), ("r", "2")).Close("circle");
                break;
        }
    }

    /// <summary>A round step that gives a few ticks.</summary>
    private static double Step(double span)
    {
        var least = Math.Max(1, span / MostTicks);
        var power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return new[] { 1.0, 2, 5, 10 }.Select(m => m * power).First(s => s >= least);
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private sealed record Scale(double From, double To)
    {
        public double X(double hours) => Left + ((hours - From) / (To - From) * (Width - Left - Right));
    }
}
