using FleetTrend.Records.Words;
using FleetTrend.Statistics.Effects;

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

    /// <summary>What came of it: counts, beside the like, then the verdict.</summary>
    internal static string Statement(EffectVerdict verdict, int foundBefore, double expectedBefore, int foundAfter, double expectedAfter) =>
        $"{Verdict(verdict)} Before: {Found(foundBefore, expectedBefore)}. Since: {Found(foundAfter, expectedAfter)}.";

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
