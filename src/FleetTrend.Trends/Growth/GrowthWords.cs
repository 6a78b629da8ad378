using FleetTrend.Records.Words;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Growth;

/// <summary>How it reads which way a kind of place goes.</summary>
public static class GrowthWords
{
    /// <summary>What the numbers can and cannot say, for every list of them.</summary>
    public const string Meaning =
        "Each line is about a kind of location on all aircraft of a type group together; it raises no flag. The calendar takes the last three years and sets each aircraft beside "
        + "itself. Flight hours set older aircraft also beside younger ones. The two go together: an aircraft gains hours as time passes, so that either may stand for the other. Looks made "
        + "because something was found make a trend look stronger. Parts that are renewed have no line by aircraft hours: how they wear with their own age is told with their lives, and more "
        + "findings may come of parts that are older now.";

    /// <summary>The verdict in sentences.</summary>
    public static string Statement(GrowthTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        List<string> sentences = [$"{Subject(trend)}: {Calendar(trend)}."];
        if (trend.Hours is { } hours && Hours(hours) is { } told)
            sentences.Add($"{told}.");
        if (HowSure(trend) is { } sure)
            sentences.Add($"{sure}.");
        return string.Join(' ', sentences);
    }

    /// <summary>Kind, type group and condition: <c>Welds of a Y joint, trainer-four, cracks</c>.</summary>
    public static string Subject(GrowthTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        return $"{FirstLetter.Capital(LocationWords.Plural(LocationWords.Kind(trend.Title, trend.Kind)))}, {trend.TypeGroup}, {ConditionWords.Many(trend.Condition)}";
    }

    /// <summary>What was found, in a word or two.</summary>
    public static string Found(GrowthFinding finding) => finding switch
    {
        GrowthFinding.Worse => "getting worse",
        GrowthFinding.Better => "getting better",
        GrowthFinding.NoneShown => "no trend shown",
        _ => "too few to tell",
    };

    private static string Calendar(GrowthTrend trend)
    {
        var clock = trend.Calendar;
        var behind = $"{ConditionWords.Count(clock.Events, trend.Condition)} on {NumberWords.Count(clock.Aircraft)} aircraft in three years";
        if (clock.Growth is not { Value: { } ratio })
        {
            return clock.Growth.NotEnoughData?.EndsWith("watched", StringComparison.Ordinal) == true
                ? $"no trend is told; all of {behind} lie at one end of them"
                : $"too few to tell a trend: {behind}. One is told from {GrowthAnalysis.FewestEvents} on at least {Statistics.Recurrences.GrowthFit.FewestUnits} aircraft on";
        }

        var (compared, range) = ($"{Times(ratio)} as often now as two years ago", Range(clock.Growth));
        return clock.Finding switch
        {
            GrowthFinding.Worse or GrowthFinding.Better => $"{Found(clock.Finding)}; {compared} ({range}), by {behind}",
            _ => $"no trend is shown by {behind}; {compared} fits best, and {range} times fits too",
        };
    }

    private static string? Hours(GrowthClock clock)
    {
        if (clock.Growth.Value is not { } exponent)
            return null;
        var figure = $"growth exponent {NumberWords.BesideOne(exponent)}, {Range(clock.Growth)}";
        return clock.Finding switch
        {
            GrowthFinding.Worse => $"Over flight hours: the more hours an aircraft has, the more often ({figure})",
            GrowthFinding.Better => $"Over flight hours: the more hours an aircraft has, the less often ({figure})",
            _ => $"Over flight hours no trend is shown ({figure})",
        };
    }

    private static string? HowSure(GrowthTrend trend) =>
        new[] { trend.Calendar, trend.Hours }.OfType<GrowthClock>()
            .Where(c => c.Finding is GrowthFinding.Worse or GrowthFinding.Better).Max(c => c.AdjustedPValue) is { } p
            ? ChanceWords.OfGrowth(Chances.PValue.Approximate(p))
            : null;

    private static string Times(double ratio) => NumberWords.BesideOne(ratio) is var text && text == "2.0" ? "twice" : $"{text} times";

    private static string Range(Figure figure) => $"{NumberWords.BesideOne(Math.Max(0, figure.Lower ?? 0))} to {(figure.Upper is { } upper ? NumberWords.BesideOne(upper) : "no limit")}";
}
