using FleetTrend.Records.Words;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.PartNumbers;

/// <summary>How part numbers beside each other read.</summary>
public static class PartNumberWords
{
    /// <summary>What the numbers can and cannot say, for every list of them.</summary>
    public const string Meaning =
        "Part numbers of one kind beside each other, on the same type group. Aircraft may have carried both; what one aircraft does to all its parts is allowed for. A number "
        + "that came in together with another torque, sealant or supplier looks better or worse for that too. Which part may be fitted, the maker's parts catalogue and the "
        + "licensed person who signs say.";

    /// <summary>The verdict: how many of each failed, what lasts longer or fails early more often, and how sure.</summary>
    public static string Verdict(PartNumberTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        List<string> sentences = [$"{FirstLetter.Capital(Counts(trend))}."];
        if (trend.Numbers.Count > 1)
            sentences.AddRange(Called(trend));
        if (trend.NotTold > 0)
            sentences.Add($"Of {NumberWords.Count(trend.NotTold)} more the records do not tell the part number.");
        if (HowSure(trend) is { } sure)
            sentences.Add(sure);
        return string.Join(' ', sentences);
    }

    /// <summary>What is called most surely, with the kind before it: <c>Exhaust gasket: G-2 lasts about 1.8 times as long as G-1.</c></summary>
    public static string Headline(PartNumberTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        return $"{FirstLetter.Capital(LocationWords.Kind(trend.Title, trend.Kind))}: {Compared(CalledOf(trend)[0])}.";
    }

    /// <summary>One comparison: <c>G-2 lasts about 1.8 times as long as G-1</c>; no full stop.</summary>
    public static string Compared(PartNumberComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (better, worse) = (comparison.Better, comparison.Worse);
        if (comparison.Measure == PartNumberMeasure.Life)
        {
            var from = comparison.Hours > 0 ? $"; those that failed within {NumberWords.Hours(comparison.Hours)} are left out" : "";
            return comparison.Times.Value is { } longer
                ? $"{better} lasts about {NumberWords.BesideOne(longer)} times as long as {worse}{from}"
                : $"too few have failed to say how much longer {better} lasts than {worse}";
        }

        var within = $"within {NumberWords.Hours(comparison.Hours)} of going in";
        return comparison.Times.Value is { } often
            ? $"{worse} fails {within} about {NumberWords.BesideOne(often)} times as often as {better}"
            : $"{worse} fails {within}, and no {better} has";
    }

    /// <summary>What a comparison found, in a word or two.</summary>
    public static string Found(PartNumberComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return comparison.Finding switch
        {
            PartNumberFinding.Better when comparison.Measure == PartNumberMeasure.Life => $"{comparison.Better} lasts longer",
            PartNumberFinding.Better => $"{comparison.Worse} fails early more often",
            PartNumberFinding.NoneShown => "no difference shown",
            _ => "too few to compare",
        };
    }

    private static string Counts(PartNumberTrend trend)
    {
        var kinds = LocationWords.Plural(LocationWords.Kind(trend.Title, trend.Kind));
        if (trend.Numbers is [var only])
        {
            return $"all {kinds} whose part number is on record have one number, {only.PartNumber}: there is nothing to compare";
        }

        return string.Join("; ", trend.Numbers.Select((n, i) => i == 0
            ? $"of {NumberWords.Count(n.Lives)} {kinds} with part number {n.PartNumber} {Failed(n.Failures, n.Lives)}"
            : $"of {NumberWords.Count(n.Lives)} with {n.PartNumber} {Failed(n.Failures, n.Lives)}"));
    }

    private static string Failed(int failures, int lives) =>
        failures == 0 ? "none failed" : failures == lives && lives > 1 ? "all failed" : $"{NumberWords.Count(failures)} failed";

    private static IEnumerable<string> Called(PartNumberTrend trend)
    {
        var called = CalledOf(trend);
        foreach (var comparison in called.Take(2))
        {
            yield return $"{FirstLetter.Capital(Compared(comparison))}.";
        }

        if (called.Count == 0)
        {
            yield return trend.Comparisons.Any(c => c.Finding == PartNumberFinding.NoneShown)
                ? "No difference between them is shown; there may still be one."
                : "Too few have failed to compare them.";
        }
    }

    private static List<PartNumberComparison> CalledOf(PartNumberTrend trend) =>
        [.. trend.Comparisons.Where(c => c.Finding == PartNumberFinding.Better).OrderBy(c => c.AdjustedPValue).ThenBy(c => c.Measure)];

    private static string? HowSure(PartNumberTrend trend) =>
        trend.Comparisons.Where(c => c.Finding == PartNumberFinding.Better).Max(c => c.AdjustedPValue) is { } p
            ? $"{ChanceWords.OfPartNumbers(Chances.PValue.Approximate(p))}."
            : null;
}
