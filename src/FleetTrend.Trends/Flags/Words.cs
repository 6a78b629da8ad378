using System.Globalization;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Flags;

/// <summary>Numbers and trade words as a mechanic reads them.</summary>
internal static class Words
{
    /// <summary>Two or three figures, no more than the data bear: <c>0.84</c>, <c>4.2</c>, <c>37</c>, <c>1,240</c>.</summary>
    public static string Number(double value) => Math.Abs(value) switch
    {
        0 => "0",
        < 0.995 => value.ToString("0.00", CultureInfo.InvariantCulture),
        < 9.95 => value.ToString("0.0", CultureInfo.InvariantCulture),
        _ => value.ToString("#,0", CultureInfo.InvariantCulture),
    };

    /// <summary>A ratio: as many figures as keep it on its side of 1.</summary>
    public static string BesideOne(double ratio)
    {
        if (ratio == 1 || Number(ratio) != Number(1)) return Number(ratio);
        for (var digits = 2; digits <= 4; digits++)
        {
            var text = ratio.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            if (text != 1.0.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)) return text;
        }

        return ratio < 1 ? "just below 1" : "just above 1";
    }

    /// <summary>An expected count with its interval in brackets: <c>1.0 (95 % interval 0.46 to 1.9)</c>.</summary>
    public static string Expected(Figure expected) => $"{Number(expected.Value ?? 0)} ({Interval(expected)})";

    /// <summary>A ratio with its interval in brackets, or why there is none.</summary>
    public static string Ratio(Figure ratio) =>
        ratio.Value is { } value ? $"{BesideOne(value)} times, {Interval(ratio)}"
        : ratio.Lower is not null ? $"no finite ratio, {Interval(ratio)}"
        : "no ratio";

    /// <summary>The interval in words; an end that the data do not limit is said so.</summary>
    public static string Interval(Figure figure)
    {
        var share = Percent(figure.Confidence);
        Func<double, string> end = figure.Unit.Length == 0 ? BesideOne : Number;
        return (figure.Lower, figure.Upper) switch
        {
            ({ } lower, { } upper) => $"{share} interval {end(lower)} to {end(upper)}",
            ({ } lower, null) => $"{share} interval from {end(lower)} up, without an upper end",
            (null, { } upper) => $"{share} interval up to {end(upper)}",
            _ => "without an interval",
        };
    }

    /// <summary>With a small first letter, to go on within a sentence.</summary>
    public static string Small(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    /// <summary>A share in percent: <c>95 %</c>, <c>0.8 %</c>, <c>under 0.1 %</c>.</summary>
    public static string Percent(double share) => share switch
    {
        < 0.001 => "under 0.1 %",
        < 0.0995 => (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %",
        _ => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %",
    };

    /// <summary>A count with its noun.</summary>
    public static string Count(int count, string one, string several) => $"{count:#,0} {(count == 1 ? one : several)}";

    /// <summary>A number of events of a condition.</summary>
    public static string Events(int count, Condition condition) => condition switch
    {
        Condition.Crack => Count(count, "crack", "cracks"),
        Condition.LeakTrace => Count(count, "leak trace", "leak traces"),
        Condition.Erosion => Count(count, "case of erosion", "cases of erosion"),
        Condition.Corrosion => Count(count, "case of corrosion", "cases of corrosion"),
        Condition.Looseness => Count(count, "case of looseness", "cases of looseness"),
        Condition.MissingPiece => Count(count, "missing piece", "missing pieces"),
        Condition.Distortion => Count(count, "case of distortion", "cases of distortion"),
        Condition.Wear => Count(count, "case of wear", "cases of wear"),
        Condition.Hardening => Count(count, "case of hardening", "cases of hardening"),
        _ => Count(count, "other finding", "other findings"),
    };

    /// <summary>What was done, as a past participle.</summary>
    public static string Done(ActionKind action) => action switch
    {
        ActionKind.StopDrilled => "stop-drilled",
        ActionKind.WeldRepaired => "welded",
        ActionKind.Replaced => "replaced",
        ActionKind.Retorqued => "re-torqued",
        ActionKind.Resurfaced => "resurfaced",
        ActionKind.Cleaned => "cleaned",
        ActionKind.Adjusted => "adjusted",
        ActionKind.Deferred => "deferred",
        _ => "monitored",
    };

    /// <summary>What was done and how often: <c>stop-drilled 4 times, welded once</c>; empty where nothing was.</summary>
    public static string DoneOften(IEnumerable<ActionKind> actions) => string.Join(", ", actions
        .GroupBy(a => a)
        .OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
        .Select(g => $"{Done(g.Key)} {(g.Count() == 1 ? "once" : $"{g.Count()} times")}"));

    /// <summary>A day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
