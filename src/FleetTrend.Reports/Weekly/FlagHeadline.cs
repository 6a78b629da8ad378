using FleetTrend.Records.Findings;
using FleetTrend.Reports.Words;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Reports.Weekly;

/// <summary>A flag in a few words.</summary>
internal static class FlagHeadline
{
    /// <summary>With its subject: <c>ZZ-A07 cracks again at cyl 3 flange weld</c>.</summary>
    public static string Of(ProposedFlag flag) => flag.Kind switch
    {
        FlagKind.BasePartLife when flag.Contrast is { } contrast => ContrastWords.Headline(Parts(flag), flag.Base, contrast),
        FlagKind.BasePartLife => $"{Parts(flag)} fail sooner at {flag.Base}",
        _ => $"{flag.Registration} {Predicate(flag)}",
    };

    /// <summary>Without its subject: <c>cracks again at cyl 3 flange weld</c>.</summary>
    public static string Predicate(ProposedFlag flag)
    {
        var condition = flag.Condition ?? Condition.Other;
        return flag.Kind switch
        {
            FlagKind.RepeatLocation => $"{ConditionWords.Again(condition)} at {LocationWords.List(flag.Locations, 1)}",
            FlagKind.AirframeDrift => Drift(flag, condition),
            _ => $"{Parts(flag)} {(flag.Contrast is { } contrast ? ContrastWords.Predicate(contrast) : "fail sooner than at the other bases")}",
        };
    }

    /// <summary>A part kind as many: <c>exhaust gaskets</c>; the word before "of" takes the s.</summary>
    public static string Plural(string kind)
    {
        var of = kind.IndexOf(" of ", StringComparison.Ordinal);
        var (head, tail) = of < 0 ? (kind, string.Empty) : (kind[..of], kind[of..]);
        return (head.EndsWith('s') ? head : head + "s") + tail;
    }

    /// <summary>With a capital first letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Parts(ProposedFlag flag) => $"{Plural(LocationWords.Kind(flag.PartKindTitle, flag.PartKind ?? "part"))} of {flag.TypeGroup}";

    private static string Drift(ProposedFlag flag, Condition condition)
    {
        var where = flag.Locations.Count > 0 ? $", most at {LocationWords.Of(flag.Locations[0])}" : string.Empty;
        var many = ConditionWords.Many(condition);
        return flag.Ratio.Value is { } ratio && double.IsFinite(ratio)
            ? $"has {NumberWords.Rounded(ratio)} times the {many} of its like{where}"
            : $"has {ConditionWords.Count(flag.Observed, condition)}; similar aircraft have none{where}";
    }
}
