using FleetTrend.Records.Words;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Words;

/// <summary>What a comparison of one base with the others found, in words; what was found is taken as it stands and not judged again.</summary>
public static class ContrastWords
{
    /// <summary>
    /// What is called of a base, or that no difference is shown: <c>exhaust gaskets fail sooner at North: half by 442 h, against 972 h elsewhere</c>.
    /// </summary>
    /// <param name="parts">The parts, many: <c>exhaust gaskets</c>.</param>
    /// <param name="at">The base.</param>
    /// <param name="contrast">The comparison.</param>
    public static string Headline(string parts, string at, BaseContrast contrast)
    {
        List<(string Verb, string Numbers)> found = [.. Found(contrast)];
        return found.Count == 0
            ? $"no difference shown between {parts} at {at} and at the other bases"
            : $"{parts} {found[0].Verb} at {at}: {found[0].Numbers}{Also(found)}";
    }

    /// <summary>What is called, without the base: <c>fail sooner than at the other bases: half by 442 h, against 972 h elsewhere</c>.</summary>
    /// <param name="contrast">The comparison, of a base that is called worse.</param>
    public static string Predicate(BaseContrast contrast)
    {
        List<(string Verb, string Numbers)> found = [.. Found(contrast)];
        return found.Count == 0
            ? "show no difference from the other bases"
            : $"{found[0].Verb} than at the other bases: {found[0].Numbers}{Also(found)}";
    }

    private static string Also(List<(string Verb, string Numbers)> found) =>
        string.Concat(found.Skip(1).Select(f => $"; they also {f.Verb}: {f.Numbers}"));

    private static IEnumerable<(string Verb, string Numbers)> Found(BaseContrast contrast)
    {
        var median = contrast.Median switch
        {
            ContrastFinding.Worse => "fail sooner",
            ContrastFinding.Better => "last longer",
            _ => null,
        };
        var early = contrast.Early switch
        {
            ContrastFinding.Worse => "fail early more often",
            ContrastFinding.Better => "fail early less often",
            _ => null,
        };
        if (median is not null) yield return (median, Medians(contrast));
        if (early is not null)
        {
            yield return (early, $"{Chance(contrast.EarlyHere)} within {NumberWords.Hours(contrast.EarlyHours ?? 0)}, "
                + $"against {Chance(contrast.EarlyElsewhere)} elsewhere");
        }
    }

    private static string Medians(BaseContrast contrast)
    {
        var left = contrast.MedianFromHours > 0 ? "early failures left out, " : string.Empty;
        return contrast is { MedianHere.Value: { } here, MedianElsewhere.Value: { } elsewhere }
            ? $"{left}half by {NumberWords.Hours(here)}, against {NumberWords.Hours(elsewhere)} elsewhere"
            : $"{left}{NumberWords.BesideOne(contrast.MedianRatio.Value ?? 0)} times as long as elsewhere";
    }

    private static string Chance(Figure? chance) => chance?.Value is { } value ? NumberWords.Percent(value) : "none";
}
