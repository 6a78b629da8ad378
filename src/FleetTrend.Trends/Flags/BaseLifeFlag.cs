using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of a base where a kind of part fails early more often than at the other bases, or does not last as long.</summary>
internal static class BaseLifeFlag
{
    private const string MedianTest =
        "median life at this base against that at the other bases of the type group, aircraft independent and not their parts: jackknife over "
        + "aircraft, Student's t (Lipsitz, Dear and Zhao 1994)";

    private const string EarlyTest =
        "early failures at this base against those at the other bases of the type group, given their sum, with the spread between aircraft: "
        + "mid-P (Przyborowski and Wilenski 1940; Lancaster 1961)";

    /// <summary>The flag of a trend whose contrast calls it worse.</summary>
    /// <param name="trend">The trend.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="tests">Tests made together.</param>
    public static ProposedFlag Propose(PartLifeTrend trend, LocationKind kind, int tests)
    {
        var contrast = trend.Contrast!;
        var worst = contrast.Worst!;
        var isEarly = ReferenceEquals(worst, contrast.EarlyTest);
        return new ProposedFlag
        {
            Subject = FlagSubjects.BaseLife(trend.TypeGroup, trend.Base!, trend.Kind),
            Kind = FlagKind.BasePartLife,
            Base = trend.Base!,
            TypeGroup = trend.TypeGroup,
            PartKind = trend.Kind,
            PartKindTitle = trend.KindTitle,
            Locations = [],
            Ratio = isEarly ? contrast.EarlyRatio! : contrast.MedianRatio,
            Contrast = contrast,
            Observed = trend.Failures,
            PValue = PValue.Approximate(worst.PValue),
            QValue = worst.QValue,
            Test = isEarly ? EarlyTest : MedianTest,
            Family = $"all {NumberWords.Count(tests, "test", "tests")} of early failures and of median life, of a base and a kind of part against the other bases, "
                + "all type groups together (Benjamini and Hochberg 1995)",
            Statement = Statement(trend, contrast, worst),
            WhatToCheck = WhatToCheck.ForBase(kind),
        };
    }

    /// <summary>The flag of a base whose parts fail sooner than elsewhere and, lately, sooner than they did there.</summary>
    /// <param name="flag">The flag of the comparison with the other bases.</param>
    /// <param name="change">That of the change, about the same base and kind of part.</param>
    public static ProposedFlag With(ProposedFlag flag, ProposedFlag change) =>
        flag with { Change = change.Change, SinceDate = change.SinceDate, Statement = $"{flag.Statement} {change.Statement}" };

    private static string Statement(PartLifeTrend trend, BaseContrast contrast, ContrastTest worst)
    {
        var parts = $"{LocationWords.Plural(LocationWords.Kind(trend.KindTitle, trend.Kind))} of {trend.TypeGroup}";
        var failures = NumberWords.Count(trend.Failures, "failure", "failures");
        var elsewhere = NumberWords.Count(contrast.OtherFailures, "failure", "failures");
        return $"{FirstLetter.Capital(ContrastWords.Headline(parts, trend.Base!, contrast))}. "
            + $"Here {failures} among {NumberWords.Count(trend.Lives, "life", "lives")}, "
            + $"elsewhere {elsewhere} among {NumberWords.Count(contrast.OtherLives, "life", "lives")}. "
            + $"{ChanceWords.OfDifference(PValue.Approximate(worst.PValue))}. Over all comparisons of bases, "
            + FirstLetter.Small(ChanceWords.OfCalls(worst.QValue, PValueLaw.Approximate, ChanceWords.OneLife)) + ".";
    }
}
