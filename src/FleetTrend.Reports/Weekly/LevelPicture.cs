using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>The plot of the levels of aircraft, for the condition of the most pressing flag.</summary>
internal static class LevelPicture
{
    private const int MostTails = 24;

    public static Block.Picture? Compose(ReportDraft draft, IReadOnlyList<Level> levels)
    {
        var condition = draft.Flags.FirstOrDefault(f => f.Flag.Kind == FlagKind.AirframeDrift)?.Flag.Condition ?? Condition.Crack;
        var ranked = levels
            .Where(l => l.Registration is not null && l.Condition == condition && l.Ratio.Value is not null)
            .OrderByDescending(l => l.Ratio.Value).ThenBy(l => l.Registration, StringComparer.Ordinal)
            .ToList();
        if (ranked.Count < 2) return null;
        var flagged = draft.Flags
            .Where(f => f.Flag.Kind == FlagKind.AirframeDrift && f.Flag.Condition == condition && f.Flag.Registration is not null)
            .Select(f => f.Flag.Registration!)
            .ToHashSet(StringComparer.Ordinal);
        var shown = ranked.Take(MostTails).ToList();
        return draft.Show(new LevelPlot(
            "levels", Alt(condition, ranked, flagged), Caption(draft, condition, shown, ranked.Count, shown[0].Ratio), [.. shown.Select(l => Dot(l, flagged))]));
    }

    private static LevelDot Dot(Level level, HashSet<string> flagged) => new(
        $"{level.Registration}  {level.Found} / {NumberWords.Rounded(level.Expected)}",
        level.Ratio.Value!.Value, level.Ratio.Lower, level.Ratio.Upper, flagged.Contains(level.Registration!));

    private static string Alt(Condition condition, List<Level> levels, HashSet<string> flagged)
    {
        var top = string.Join(", ", levels.Take(3).Select(l => $"{l.Registration} {FigureWords.Format(l.Ratio, FigureStyle.Times).OneLine}"));
        var marked = levels.Where(l => flagged.Contains(l.Registration!)).Select(l => l.Registration).ToList();
        var flags = marked.Count > 0 ? $" Flagged: {string.Join(", ", marked)}." : " None of them is flagged for it.";
        return $"Dot plot of {ConditionWords.Many(condition)}, times the norm, for {levels.Count} aircraft. Highest: {top}.{flags}";
    }

    private static string Caption(ReportDraft draft, Condition condition, List<Level> shown, int all, Figure ratio)
    {
        var some = all > shown.Count ? $" The {shown.Count} highest of {all} aircraft." : string.Empty;
        return $"{FirstLetter.Capital(ConditionWords.Many(condition))} per aircraft, times the norm, with {NumberWords.PercentInFull(ratio.Confidence)} intervals; "
            + $"beside each tail found / expected.{some} Diamonds are flagged for it. Method [{draft.Methods.NumberOf(ratio.Method)}], {draft.AsOf}.";
    }
}
