using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Trends.Repairs;

/// <summary>Compares each two actions at the same kind of location.</summary>
internal static class RepairComparisons
{
    private const string TimesAsLongMethod =
        "Weibull with one shape and a scale each between looks; aircraft independent and not their repairs: jackknife over aircraft, Student's t (Meeker and "
        + "Escobar 1998, chapter 17; Lipsitz, Dear and Zhao 1994)";

    /// <summary>Flight hours by which few repairs are compared.</summary>
    private const double Within = 200;

    public static IReadOnlyList<RepairComparison> Compare(IReadOnlyList<RepairGroup> groups, TrendParameters parameters) =>
        [.. groups.SelectMany((a, i) => groups.Skip(i + 1).Select(b => (First: a, Second: b)))
            .Where(p => p.First.Followed > 0 && p.Second.Followed > 0)
            .Select(p => Compare(p.First, p.Second, parameters))];

    /// <summary>Settles what a comparison found, allowing for all comparisons of the fleet together.</summary>
    public static RepairComparison Settle(RepairComparison comparison, TestFamily tests, TrendParameters parameters)
    {
        if (comparison.PValue is not { } p)
            return comparison;
        var adjusted = tests.HolmPValue(p);
        return comparison with
        {
            AdjustedPValue = adjusted,
            Finding = adjusted < 1 - parameters.Confidence ? RepairFinding.HoldsLonger : RepairFinding.NoneShown,
        };
    }

    private static RepairComparison Compare(RepairGroup first, RepairGroup second, TrendParameters parameters)
    {
        if (Math.Min(first.CameBack, second.CameBack) >= parameters.MinimumFailuresForFit
            && SharedUnitsContrast.Estimate(LifeDistribution.Weibull, Units(first, second), parameters.Confidence).TryGetValue(out var contrast))
        {
            if (contrast.Ratio.Value < 1)
                return Compare(second, first, parameters);
            return new RepairComparison
            {
                Longer = first.Action,
                Shorter = second.Action,
                TimesAsLong = Figures.Times(
                    contrast.Ratio, parameters.Confidence, first.CameBack + second.CameBack, first.Followed + second.Followed, TimesAsLongMethod),
                PValue = contrast.PValue,
            };
        }

        return CompareFew(first, second, parameters);
    }

    private static RepairComparison CompareFew(RepairGroup first, RepairGroup second, TrendParameters parameters)
    {
        var (a, b) = (first.KnownBy(Within), second.KnownBy(Within));
        var (back, of, otherBack, otherOf) = (a.Sum(u => u.Events), a.Sum(u => u.Trials), b.Sum(u => u.Events), b.Sum(u => u.Trials));
        if ((long)back * otherOf > (long)otherBack * of)
            return CompareFew(second, first, parameters);
        var test = ClusteredShares.Compare(a, b);
        return new RepairComparison
        {
            Longer = first.Action,
            Shorter = second.Action,
            Counts = test.IsEstimated ? new RepairCounts(Within, back, of, otherBack, otherOf) : null,
            // What its few repairs could never call is not tested, and takes nothing from the others (Tarone 1990).
            PValue = test.TryGetValue(out var p) && p.SmallestPValue <= 1 - parameters.Confidence ? p.PValue : null,
        };
    }

    private static IReadOnlyList<UnitLives> Units(RepairGroup first, RepairGroup second) =>
        [.. first.ByAircraft.Keys.Union(second.ByAircraft.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(a => new UnitLives(first.ByAircraft.GetValueOrDefault(a, []), second.ByAircraft.GetValueOrDefault(a, [])))];
}
