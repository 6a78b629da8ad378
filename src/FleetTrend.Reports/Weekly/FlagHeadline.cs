using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>A flag in a few words.</summary>
internal static class FlagHeadline
{
    /// <summary>With its subject: <c>ZZ-A07 cracks again at cyl 3 flange weld</c>.</summary>
    public static string Format(ProposedFlag flag) => flag.Kind switch
    {
        FlagKind.BasePartLife when flag.Contrast is { } contrast => ContrastWords.Headline(Parts(flag), flag.Base, contrast),
        FlagKind.BasePartLife or FlagKind.BaseDrift when flag.Change is { } change => $"{flag.Base} {ChangeWords.Predicate(change, flag.PartKindTitle)}",
        FlagKind.BasePartLife => $"{Parts(flag)} fail sooner at {flag.Base}",
        _ => $"{flag.Registration} {Predicate(flag)}",
    };

    /// <summary>Without its subject: <c>cracks again at cyl 3 flange weld</c>.</summary>
    public static string Predicate(ProposedFlag flag)
    {
        var condition = flag.Condition ?? Condition.Other;
        return flag.Kind switch
        {
            _ when flag is { Change: { } change, Contrast: null } => ChangeWords.Predicate(change, flag.PartKindTitle),
            FlagKind.RepeatLocation => $"{ConditionWords.Again(condition)} at {LocationWords.List(flag.Locations, 1)}",
            FlagKind.AirframeDrift => Drift(flag, condition),
            _ => $"{Parts(flag)} {(flag.Contrast is { } contrast ? ContrastWords.Predicate(contrast) : "fail sooner than at the other bases")}",
        };
    }

    private static string Parts(ProposedFlag flag) => $"{LocationWords.Plural(LocationWords.Kind(flag.PartKindTitle, flag.PartKind ?? "part"))} of {flag.TypeGroup}";

    private static string Drift(ProposedFlag flag, Condition condition)
    {
        var where = flag.Locations.Count > 0 ? $", most at {LocationWords.Name(flag.Locations[0])}" : string.Empty;
        var many = ConditionWords.Many(condition);
        return flag.Ratio.Value is { } ratio && double.IsFinite(ratio)
            ? $"has {NumberWords.Rounded(ratio)} times the {many} of similar aircraft{where}"
            : $"has {ConditionWords.Count(flag.Observed, condition)}; similar aircraft have none{where}";
    }
}
