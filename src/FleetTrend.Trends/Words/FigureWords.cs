using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Words;

/// <summary>The parts in which a figure is always shown: value, interval, counts.</summary>
/// <param name="Value">The estimate with its unit, or why there is none.</param>
/// <param name="Interval">The interval, or that there is none.</param>
/// <param name="Counts">The events and the exposure or lives behind it, of a rate with its dispersion.</param>
public sealed record FigureWords(string Value, string Interval, string Counts)
{
    /// <summary>Words for a figure.</summary>
    public static FigureWords Format(Figure figure, FigureStyle style)
    {
        var value = figure.Value is { } estimate && double.IsFinite(estimate)
            ? Amount(estimate, figure, style)
            : figure.NotEnoughData ?? $"not enough data: {NumberWords.Count(figure.Events, "event", "events")}";
        return new FigureWords(value, FormatInterval(figure, style), FormatCounts(figure));
    }

    /// <summary>Value and interval, without the counts: <c>3.9 times (95 % interval 1.4 to 6.2)</c>.</summary>
    public string Estimate => $"{Value} ({Interval})";

    /// <summary>All in one line: <c>3.90 times (95 % interval 1.40 to 6.20; 8 events in 1,240 h)</c>.</summary>
    public string OneLine => $"{Value} ({Interval}; {Counts})";

    private static string Amount(double value, Figure figure, FigureStyle style) => style switch
    {
        FigureStyle.Times => Bare(value, style) + " times",
        FigureStyle.Hours => Bare(value, style) + " h",
        FigureStyle.Chance or FigureStyle.Count => Bare(value, style),
        _ => figure.Unit.Length == 0 ? Bare(value, style) : $"{Bare(value, style)} {figure.Unit}",
    };

    private static string Bare(double value, FigureStyle style) => style switch
    {
        FigureStyle.Hours => NumberWords.HoursBare(value),
        FigureStyle.Chance => NumberWords.Percent(value),
        FigureStyle.Times => NumberWords.BesideOne(value),
        _ => NumberWords.Rounded(value),
    };

    private static string FormatInterval(Figure figure, FigureStyle style)
    {
        var confidence = NumberWords.PercentInFull(figure.Confidence);
        var upper = figure.Upper is { } limit && double.IsFinite(limit) ? limit : (double?)null;
        var lower = figure.Lower is { } floor && double.IsFinite(floor) ? floor : (double?)null;
        if (figure is { DataFrom: { } from, DataTo: { } to })
            return $"{confidence} interval {WithinData(lower ?? 0, from, to)} to {WithinData(upper ?? double.PositiveInfinity, from, to)}";
        return (lower, upper) switch
        {
            ({ } l, { } u) => $"{confidence} interval {Bare(l, style)} to {Bare(u, style)}",
            (null, { } u) => $"at most {Amount(u, figure, style)}, {confidence}",
            ({ } l, null) => $"at least {Amount(l, figure, style)}, {confidence}; no upper limit",
            _ => "no interval",
        };
    }

    // What a fitted law says outside the ages of the data is no finding.
    private static string WithinData(double hours, double from, double to) =>
        hours < from ? "below " + NumberWords.HoursBare(from)
        : hours > to ? "beyond " + NumberWords.HoursBare(to)
        : NumberWords.HoursBare(hours);

    private static string FormatCounts(Figure figure)
    {
        var lives = figure.Lives is { } count
            ? $"{NumberWords.Count(figure.Events, "failure", "failures")} among {NumberWords.Count(count, "life", "lives")}"
            : NumberWords.Count(figure.Events, "event", "events");
        var counts = figure.ExposureHours is { } hours ? $"{lives} in {NumberWords.Hours(hours)}" : lives;
        return figure.Dispersion is { } dispersion ? $"{counts}, dispersion {NumberWords.Rounded(dispersion)}" : counts;
    }
}
