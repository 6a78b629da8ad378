using System.Globalization;
using FleetTrend.Trends.Chances;

namespace FleetTrend.Trends.Words;

/// <summary>
/// p-values and q-values in plain words: the one place that words them. An exact chance is told down to 1 in 10,000, an approximate one
/// down to 1 in 1,000; below that only that it is smaller.
/// </summary>
public static class ChanceWords
{
    /// <summary>What the tests of counts assume.</summary>
    public const string OneRate = "if like aircraft have one rate and findings come singly";

    /// <summary>What the tests of lives assume.</summary>
    public const string OneLife = "if like parts last alike at all bases";

    /// <summary>How often a count: <c>If it were like the rest, a count this high would come up about once in 900</c>; no full stop.</summary>
    public static string OfCount(PValue p) => $"If it were like the rest, a count this high would come up {HowOften(p)}";

    /// <summary>How often a difference: <c>If the bases were alike, a difference this large would come up about once in 900</c>; no full stop.</summary>
    public static string OfDifference(PValue p) => $"If the bases were alike, a difference this large would come up {HowOften(p)}";

    /// <summary>How often a difference between repairs: <c>If they held alike, a difference this large would come up about once in 900</c>; no full
    /// stop.</summary>
    /// <param name="p">The p-value, adjusted for all comparisons.</param>
    public static string OfRepairs(PValue p) => $"If they held alike, a difference this large would come up {HowOften(p)}, all comparisons allowed for";

    /// <summary>How often a difference between part numbers: <c>If they lasted alike, a difference this large would come up about once in 900</c>; no full
    /// stop.</summary>
    /// <param name="p">The p-value, adjusted for all comparisons.</param>
    public static string OfPartNumbers(PValue p) => $"If they lasted alike, a difference this large would come up {HowOften(p)}, all comparisons allowed for";

    /// <summary>How often a difference between positions: <c>If the cylinders of an aircraft were alike, a difference this large would come up about once in
    /// 900</c>; no full stop.</summary>
    /// <param name="p">The p-value, adjusted for all comparisons.</param>
    /// <param name="positions">What is compared, many.</param>
    public static string OfPositions(PValue p, string positions) =>
        $"If the {positions} of an aircraft were alike, a difference this large would come up {HowOften(p)}, all comparisons allowed for";

    /// <summary>How often a trend: <c>If nothing had changed, a trend this strong would come up about once in 900</c>; no full stop.</summary>
    /// <param name="p">The p-value, adjusted for all kinds of place and both clocks.</param>
    public static string OfGrowth(PValue p) => $"If nothing had changed, a trend this strong would come up {HowOften(p)}, all kinds and both clocks allowed for";

    /// <summary>
    /// A q-value: <c>About 1 in 50 calls this strong or stronger is a false alarm, if like aircraft have one rate and findings come
    /// singly</c>; no full stop.
    /// </summary>
    /// <param name="q">The q-value.</param>
    /// <param name="law">Of the p-values that it is made of.</param>
    /// <param name="assumption">What the test assumes: <see cref="OneRate"/> or <see cref="OneLife"/>.</param>
    public static string OfCalls(double q, PValueLaw law, string assumption)
    {
        var calls = q switch
        {
            >= 0.995 => "Almost all calls this strong or stronger are false alarms",
            > 0.35 => $"{q.ToString("0 %", CultureInfo.InvariantCulture)} of calls this strong or stronger are false alarms",
            _ when q < Floor(law) => $"Fewer than 1 in {Odds(Floor(law))} calls this strong or stronger are false alarms",
            _ => $"About 1 in {Odds(q)} calls this strong or stronger is a false alarm",
        };
        return $"{calls}, {assumption}";
    }

    /// <summary>A p-value or a q-value in brief: <c>q = 0.020</c>, <c>p below 0.0001</c>.</summary>
    public static string Named(string name, double value, PValueLaw law) =>
        value < Floor(law) ? $"{name} below {Floor(law).ToString(CultureInfo.InvariantCulture)}" : $"{name} = {Rounded(value)}";

    private static string HowOften(PValue p) => p.Value switch
    {
        > 0.35 => $"in {p.Value.ToString("0 %", CultureInfo.InvariantCulture)} of cases",
        _ when p.Value < Floor(p.Law) => $"less than once in {Odds(Floor(p.Law))}",
        _ => $"about once in {Odds(p.Value)}",
    };

    /// <summary>The smallest chance that is told.</summary>
    private static double Floor(PValueLaw law) => law == PValueLaw.Exact ? 0.0001 : 0.001;

    /// <summary>One in so many, to two digits: <c>9</c>, <c>320</c>, <c>1,200</c>.</summary>
    private static string Odds(double chance) => ToTwoDigits(1 / chance);

    /// <summary>A whole number to two digits: <c>9</c>, <c>320</c>, <c>1,200</c>.</summary>
    internal static string ToTwoDigits(double value)
    {
        var step = Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(value)) - 1));
        return (Math.Round(value / step) * step).ToString("#,0", CultureInfo.InvariantCulture);
    }

    private static string Rounded(double value) => value.ToString(
        value switch { >= 0.995 => "0.0", >= 0.0995 => "0.00", >= 0.00995 => "0.000", >= 0.000995 => "0.0000", _ => "0.00000" }, CultureInfo.InvariantCulture);
}
