using FleetTrend.Records.Words;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Effects;

/// <summary>How an effect reads.</summary>
public static class EffectWords
{
    /// <summary>The verdict in two words or so: <c>Helped</c>, <c>No better</c>, <c>Too early to tell</c>.</summary>
    public static string Verdict(Effect effect)
    {
        ArgumentNullException.ThrowIfNull(effect);
        return effect.Verdict switch
        {
            EffectVerdict.Helped => "Helped",
            EffectVerdict.NoBetter => "No better",
            EffectVerdict.TooEarly => "Too early to tell",
            _ => throw new ArgumentOutOfRangeException(nameof(effect), effect.Verdict, null),
        };
    }

    /// <summary>When which verdict is said, for the foot of a list.</summary>
    public static string Rules { get; } =
        $"Helped: what came since fits \"back to its own level\" {NumberWords.Rounded(EffectRules.OddsForHelpedAction)} times better than \"as before\" "
        + $"({NumberWords.Rounded(EffectRules.OddsForHelpedPractice)} times for a practice change). "
        + $"No better: as before fits {NumberWords.Rounded(EffectRules.OddsForNoBetter)} times better. Until then it is too early to tell. "
        + "A flag that chance alone raised is often called helped: nothing was wrong.";

    /// <summary>What came of it: the verdict, counts beside the like, and since over before with its interval.</summary>
    internal static string Statement(
        EffectVerdict verdict, int foundBefore, double expectedBefore, int foundAfter, double expectedAfter, Figure afterOverBefore)
    {
        var over = afterOverBefore.Value is null ? "" : $" Since over before: {FigureWords.Format(afterOverBefore, FigureStyle.Times).OneLine}.";
        return $"{Verdict(verdict)} Before: {Found(foundBefore, expectedBefore)}. Since: {Found(foundAfter, expectedAfter)}.{over}";
    }

    private static string Verdict(EffectVerdict verdict) => verdict switch
    {
        EffectVerdict.Helped => "It helped.",
        EffectVerdict.NoBetter => "It is no better.",
        EffectVerdict.TooEarly => "Too early to tell.",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };

    private static string Found(int found, double expected) =>
        $"{NumberWords.Count(found, "finding", "findings")}, where the others would have {NumberWords.Rounded(expected)}";
}
