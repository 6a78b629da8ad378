using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Repairs;

/// <summary>How it reads whether a repair holds.</summary>
public static class RepairWords
{
    /// <summary>Flight hours of the sentence.</summary>
    private const double Within = 200;

    /// <summary>What the numbers can and cannot say, for every list of them.</summary>
    public const string Meaning =
        "A repair has come back when a later look finds the same condition at the same location; when between two looks it did is estimated. Nobody draws lots for what is "
        + "done: worse locations may be replaced rather than welded, so look at what they had before. What may be repaired, and how, the maker's instructions say.";

    /// <summary>The verdict: what came back, what holds longer, how bad the locations were before, and how sure.</summary>
    public static string Verdict(RepairTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        List<string> sentences = [$"{FirstLetter.Capital(Counts(trend))}.", .. Called(trend)];
        if (Before(trend) is { } before)
            sentences.Add(before);
        if (HowSure(trend) is { } sure)
            sentences.Add(sure);
        return string.Join(' ', sentences);
    }

    /// <summary>What came back: <c>of 14 weld repairs at welds of a Y joint 9 cracked again within 200 h; of 11 replacements 1</c>; no full stop.</summary>
    public static string Counts(RepairTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        var (kind, back) = (LocationWords.Kind(trend.Title, trend.Kind), $"{ConditionWords.CameBack(trend.Condition)} within {NumberWords.Hours(Within)}");
        return string.Join("; ", trend.Actions.Select((a, i) => i == 0
            ? Count(a, a.Repairs > 1 ? $" at {LocationWords.Plural(kind)}" : $" at a {kind}", $" {back}")
            : Count(a, "", a.Repairs > 1 ? "" : $" {ConditionWords.CameBack(trend.Condition)}")));
    }

    /// <summary>One comparison: <c>a replacement holds about 4.5 times as long as a weld repair</c>; no full stop.</summary>
    public static string Compared(RepairComparison comparison, Condition condition)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (longer, shorter) = ($"a {ActionWords.Name(comparison.Longer)}", $"a {ActionWords.Name(comparison.Shorter)}");
        if (comparison.TimesAsLong is { Value: { } times })
            return $"{longer} holds about {NumberWords.BesideOne(times)} times as long as {shorter}";
        if (comparison.Counts is { } counts)
        {
            return $"within {NumberWords.Hours(counts.WithinHours)} {NumberWords.Count(counts.ShorterBack)} of {NumberWords.Count(counts.ShorterOf)} "
                + $"{ActionWords.Many(comparison.Shorter)} {ConditionWords.CameBack(condition)}, and {NumberWords.Count(counts.LongerBack)} of "
                + $"{NumberWords.Count(counts.LongerOf)} {ActionWords.Many(comparison.Longer)}";
        }

        return $"too few have come back to compare {longer} with {shorter}";
    }

    /// <summary>What a comparison found, in a word or two.</summary>
    public static string Found(RepairFinding finding) => finding switch
    {
        RepairFinding.HoldsLonger => "holds longer",
        RepairFinding.NoneShown => "no difference shown",
        _ => "too few to compare",
    };

    private static string Count(RepairedAction action, string where, string back)
    {
        var at = action.Shares.First(s => s.Hours == Within);
        var name = ActionWords.Name(action.Action);
        var unknown = action.Repairs - at.Known - at.Held;
        if (action.Repairs == 1)
        {
            return at.Known > 0 ? $"the one {name}{where}{back}"
                : at.Held > 0 ? $"the one {name}{where} held for {NumberWords.Hours(Within)}"
                : $"the one {name}{where} has not been followed for {NumberWords.Hours(Within)}";
        }

        var open = unknown == 0 ? "" : unknown == action.Repairs ? " (none followed that long)" : $" ({NumberWords.Count(unknown)} not followed that long)";
        return $"of {NumberWords.Count(action.Repairs)} {ActionWords.Many(action.Action)}{where} {(at.Known == 0 ? "none" : NumberWords.Count(at.Known))}{back}{open}";
    }

    private static IEnumerable<string> Called(RepairTrend trend)
    {
        if (trend.Comparisons.Count == 0)
            yield break;
        var called = trend.Comparisons.Where(c => c.Finding == RepairFinding.HoldsLonger).OrderBy(c => c.AdjustedPValue).ToList();
        foreach (var comparison in called.Take(2))
        {
            yield return comparison.TimesAsLong is null
                ? $"A {ActionWords.Name(comparison.Longer)} holds longer than a {ActionWords.Name(comparison.Shorter)}."
                : $"{FirstLetter.Capital(Compared(comparison, trend.Condition))}.";
        }

        if (called.Count == 0)
        {
            yield return trend.Comparisons.Any(c => c.Finding == RepairFinding.NoneShown)
                ? "No difference between them is shown; there may still be one."
                : "Too few have come back to compare them.";
        }
    }

    private static string? Before(RepairTrend trend)
    {
        List<string> told = [.. trend.Actions.Where(a => a.Before is { Value: not null, Events: > 0 })
            .Select(a => $"{NumberWords.Rounded(a.Before.Value!.Value)} where {ActionWords.Done(a.Action)}")];
        return told.Count < 2 ? null : $"Before that these locations had, per 1,000 h, {ConditionWords.Many(trend.Condition)}: {string.Join(", ", told)}.";
    }

    private static string? HowSure(RepairTrend trend) =>
        trend.Comparisons.Where(c => c.Finding == RepairFinding.HoldsLonger).Max(c => c.AdjustedPValue) is { } p
            ? $"{ChanceWords.OfRepairs(Chances.PValue.Approximate(p))}."
            : null;
}
