using FleetTrend.Records.Words;
using FleetTrend.Statistics.Effects;

namespace FleetTrend.Trends.Effects;

/// <summary>How an effect reads.</summary>
internal static class EffectWords
{
    /// <summary>What came of it: counts, beside the like, then the verdict.</summary>
    public static string Statement(EffectVerdict verdict, int foundBefore, double expectedBefore, int foundAfter, double expectedAfter) =>
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
