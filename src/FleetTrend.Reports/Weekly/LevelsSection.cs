using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Who runs high year in, year out: the first few in a report, a ranked list of a type group on a page. No news.</summary>
public static class LevelsSection
{
    private const int MostRows = 60;
    private const int MostInReport = 5;
    private const double ProbablyHigh = 0.5;

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
                [new("Who or where"), new("What"), new("Found", true), new("Its like would have", true), new("Times the norm", true), new("Chance above 1.5", true)],
                [.. levels.Take(MostRows).Select(Row)]),
            new Block.Paragraph(
                "Times the norm: found over expected, shrunk towards the others, since with few findings a high count is often chance. Aircraft and bases are beside "
                + "the others of the type group, a location on all aircraft beside the other locations of its kind.", IsAside: true),
            .. levels.Select(l => l.Ratio.Method).Distinct(StringComparer.Ordinal)
                .Select(method => new Block.Paragraph($"{FirstLetter.Capital(method)}; {NumberWords.PercentInFull(levels[0].Ratio.Confidence)} intervals.", IsAside: true)),
        ]);
    }

    /// <summary>Those that probably run above one and a half times the norm, and the aircraft beside each other.</summary>
    internal static ReportSection? Compose(ReportDraft draft)
    {
        var flying = draft.Fleet.ToDictionary(l => l.Registration, l => l.TypeGroup, StringComparer.Ordinal);
        var levels = draft.Current.Levels.Where(IsInScope).ToList();
        if (levels.Count == 0) return null;
        List<Level> high = [.. levels.Where(l => l.ChanceAboveOneAndAHalf >= ProbablyHigh)];
        List<Block> blocks =
        [
            new Block.Paragraph("A level is how high somebody runs over the whole past. It is no news in itself: what got worse lately is under Tails to look at.", IsAside: true),
            high.Count == 0
                ? new Block.Paragraph("None probably runs above 1.5 times the norm.")
                : new Block.Bullets([.. high.Take(MostInReport).Select(l => Said(draft, l))]),
        ];
        var rest = high.Count - MostInReport;
        var more = rest > 0 ? $"{NumberWords.Count(rest)} more that probably run above 1.5 times the norm" : "All levels";
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "levels"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{more}.", IsAside: true));
        if (LevelPicture.Compose(draft, levels) is { } picture) blocks.Add(picture);
        return new ReportSection("levels", "Who runs high, year in, year out", blocks);

        bool IsInScope(Level level) => level switch
        {
            { Registration: { } registration } => flying.TryGetValue(registration, out var group) && group == level.TypeGroup,
            { Base: { } home } => draft.Scope.Covers(home) && draft.HasTypeGroup(level.TypeGroup),
            _ => draft.HasTypeGroup(level.TypeGroup),
        };
    }

    private static Line Said(ReportDraft draft, Level level)
    {
        var ratio = FigureWords.Format(level.Ratio, FigureStyle.Times);
        return Line.Join(
            new Run.Strong(Who(level)),
            $": {What(level)}, {ratio.Value} the norm ({ratio.Interval}; {ratio.Counts}) [{draft.Methods.NumberOf(level.Ratio.Method)}].");
    }

    private static string Who(Level level) => level switch
    {
        { Registration: { } registration } => registration,
        { Location: { } location } => $"{FirstLetter.Capital(LocationWords.Name(location))} of {level.TypeGroup}",
        _ => $"{level.Base} as a whole",
    };

    private static string What(Level level) =>
        level.Condition is { } condition ? ConditionWords.Many(condition) : $"failed {LocationWords.Plural(LocationWords.Kind(null, level.Kind ?? "part"))}";

    private static IReadOnlyList<Line> Row(Level level) =>
    [
        level switch
        {
            { Location: { } location } => LocationLink.OnPage(level.TypeGroup, location),
            { Registration: { } registration } => AircraftLink.OnPage(registration),
            _ => Who(level),
        },
        FirstLetter.Capital(What(level)),
        NumberWords.Count(level.Found),
        NumberWords.Rounded(level.Expected),
        FigureWords.Format(level.Ratio, FigureStyle.Times).OneLine,
        NumberWords.Percent(level.ChanceAboveOneAndAHalf),
    ];
}
