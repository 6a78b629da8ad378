using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Who runs high in a type group, for a page: a ranked list, and no news.</summary>
public static class LevelsSection
{
    private const int MostRows = 60;

    /// <summary>The list.</summary>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="asOf">The moment of knowledge.</param>
    /// <param name="levels">Its levels, most probably high first.</param>
    public static ReportSection Compose(string typeGroup, DateTimeOffset asOf, IReadOnlyList<Level> levels)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var heading = $"Levels of {typeGroup}";
        if (levels.Count == 0)
            return new ReportSection("levels", heading, [new Block.Paragraph($"Not enough data: no findings to compare, as of {NumberWords.Moment(asOf)}.")]);
        var some = levels.Count > MostRows ? $"The {MostRows} of {NumberWords.Count(levels.Count)} that most probably run high" : "Most probably high first";
        return new ReportSection("levels", heading,
        [
            new Block.Table(
                $"{some}, as of {NumberWords.Moment(asOf)}",
                [new("Who or where"), new("What"), new("Found", true), new("Its like would have", true), new("Times its like", true), new("Chance above 1.5", true)],
                [.. levels.Take(MostRows).Select(Row)]),
            new Block.Paragraph(
                "Times its like: found over expected, shrunk towards the others, since with few findings a high count is often chance. Aircraft and bases are beside "
                + "the others of the type group, a location on all aircraft beside the other locations of its kind.", IsAside: true),
            .. levels.Select(l => l.Ratio.Method).Distinct(StringComparer.Ordinal)
                .Select(method => new Block.Paragraph($"{FirstLetter.Capital(method)}; {NumberWords.PercentInFull(levels[0].Ratio.Confidence)} intervals.", IsAside: true)),
        ]);
    }

    private static IReadOnlyList<Line> Row(Level level) =>
    [
        level switch
        {
            { Registration: { } registration } => registration,
            { Location: { } location } => FirstLetter.Capital(LocationWords.Name(location)),
            _ => $"{level.Base} as a whole",
        },
        FirstLetter.Capital(level.Condition is { } condition ? ConditionWords.Many(condition) : $"failed {LocationWords.Plural(LocationWords.Kind(null, level.Kind ?? "part"))}"),
        NumberWords.Count(level.Found),
        NumberWords.Rounded(level.Expected),
        FigureWords.Format(level.Ratio, FigureStyle.Times).OneLine,
        NumberWords.Percent(level.ChanceAboveOneAndAHalf),
    ];
}
