using FleetTrend.Records.Words;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Positions;

/// <summary>How it reads whether a cylinder or side is worse than the others.</summary>
public static class PositionWords
{
    /// <summary>What the numbers can and cannot say, for every list of them.</summary>
    public const string Meaning =
        "Every aircraft is compared with itself, so that one that runs high makes no cylinder look bad, and many findings at one place of one aircraft are that "
        + "aircraft's. Of several cylinders one always has most: what is called allows for all comparisons. No difference shown does not mean that there is none.";

    /// <summary>The verdict: what was found where, what is worse, and how sure.</summary>
    public static string Verdict(PositionTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        List<PositionLine> called = [.. trend.Positions.Where(p => p.Finding == PositionFinding.MoreOften).OrderBy(p => p.AdjustedPValue)];
        called.AddRange(trend.Positions.Where(p => p.Finding == PositionFinding.LessOften).OrderBy(p => p.AdjustedPValue));
        return called.Count > 0
            ? $"{string.Join(' ', called.Select(p => Called(trend, p)))} {HowSure(trend, called)}"
            : $"{Most(trend)}: {(trend.Positions.Any(p => p.PValue is not null) ? "no more often than chance allows" : "too few to tell")}.";
    }

    /// <summary>A cylinder or side by name, first in a sentence: <c>No. 3</c>, <c>The left side</c>.</summary>
    public static string Name(PositionTrend trend, PositionLine line)
    {
        ArgumentNullException.ThrowIfNull(trend);
        ArgumentNullException.ThrowIfNull(line);
        return trend.Sort == PositionSort.Cylinder ? $"No. {line.Name}" : $"The {line.Name} side";
    }

    /// <summary>What a comparison found, in a word or two.</summary>
    public static string Found(PositionLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Finding switch
        {
            PositionFinding.MoreOften => "more often than the others",
            PositionFinding.LessOften => "less often than the others",
            PositionFinding.NoneShown => "no more than chance allows",
            _ => line.TimesOthers is null ? "" : "too few to tell",
        };
    }

    private static string Called(PositionTrend trend, PositionLine line) =>
        $"{Had(trend, line)}: {(line.TimesOthers is { Value: { } times } figure ? $"{NumberWords.BesideOne(times)} times the {Others(trend)}{Limits(figure)}" : $"the {Others(trend)} had none")}.";

    private static string Most(PositionTrend trend)
    {
        var most = trend.Positions.MaxBy(p => p.ExposureHours > 0 ? p.Findings / p.ExposureHours : 0)!;
        return Had(trend, most);
    }

    /// <summary><c>No. 3 had 9 of 24 cracks at welds of flange to stack, on 8 aircraft</c>.</summary>
    private static string Had(PositionTrend trend, PositionLine line)
    {
        var all = trend.Positions.Sum(p => p.Findings);
        var what = line.Findings switch
        {
            1 when all is 1 => $"the one {ConditionWords.One(trend.Condition)}",
            0 => $"none of {ConditionWords.Count(all, trend.Condition)}",
            var some when some == all => $"all {ConditionWords.Count(all, trend.Condition)}",
            var some => $"{NumberWords.Count(some)} of {ConditionWords.Count(all, trend.Condition)}",
        };
        var on = line.Aircraft > 0 ? $", on {NumberWords.Count(line.Aircraft)} aircraft" : "";
        return $"{Name(trend, line)} had {what} at {LocationWords.Plural(LocationWords.Kind(trend.Title, trend.Kind))}{on}";
    }

    private static string Others(PositionTrend trend) => trend.Positions.Count > 2 ? "others" : "other";

    private static string Limits(Figure figure) => figure switch
    {
        { Lower: { } lower, Upper: { } upper } => $" ({NumberWords.BesideOne(lower)} to {NumberWords.BesideOne(upper)})",
        { Upper: { } upper } => $" (at most {NumberWords.BesideOne(upper)})",
        _ => "",
    };

    private static string HowSure(PositionTrend trend, List<PositionLine> called) => ChanceWords.OfPositions(
        PValue.Approximate(called.Max(p => p.AdjustedPValue)!.Value), trend.Sort == PositionSort.Cylinder ? "cylinders" : "sides") + ".";
}
