using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartNumbers;

/// <summary>Compares each two part numbers of a kind.</summary>
internal static class PartNumberComparisons
{
    private const string LifeMethod =
        "one shape and a scale each between looks; aircraft independent and not their parts: jackknife over aircraft, Student's t (Meeker and Escobar 1998, "
        + "chapter 17; Lipsitz, Dear and Zhao 1994)";

    private const string EarlyMethod =
        "early failures given their sum, mid-P (Przyborowski and Wilenski 1940; Lancaster 1961), with the spread between aircraft";

    public static IReadOnlyList<PartNumberComparison> Compare(
        LifeDistribution distribution, LifeModel course, IReadOnlyList<PartNumberGroup> groups, TrendParameters parameters) =>
        [.. groups.SelectMany((a, i) => groups.Skip(i + 1).Select(b => (First: a, Second: b)))
            .Where(p => p.First.Fitted.Count > 0 && p.Second.Fitted.Count > 0)
            .SelectMany(p => Compare(distribution, course, p.First, p.Second, parameters))];

    /// <summary>Settles what a comparison found, allowing for all comparisons of the fleet together.</summary>
    public static PartNumberComparison Settle(PartNumberComparison comparison, TestFamily tests, TrendParameters parameters)
    {
        if (comparison.PValue is not { } p)
            return comparison;
        var adjusted = tests.HolmPValue(p);
        return comparison with
        {
            AdjustedPValue = adjusted,
            Finding = adjusted < 1 - parameters.Confidence ? PartNumberFinding.Better : PartNumberFinding.NoneShown,
        };
    }

    private static IEnumerable<PartNumberComparison> Compare(
        LifeDistribution distribution, LifeModel course, PartNumberGroup first, PartNumberGroup second, TrendParameters parameters)
    {
        var contrast = EarlyAndLifeContrast.Estimate(
            distribution, course, Units(first, second), parameters.LookIntervalHours, parameters.Confidence);
        if (Math.Min(first.Fitted.Failures, second.Fitted.Failures) >= parameters.MinimumFailuresForFit && contrast.Life.TryGetValue(out var life))
        {
            yield return Described(PartNumberMeasure.Life, contrast.LifeFrom, life.Ratio, isFirstBetter: life.Ratio.Value >= 1, LifeMethod) with
            {
                PValue = life.PValue,
            };
        }

        if (contrast.Early.TryGetValue(out var early))
        {
            yield return Described(
                PartNumberMeasure.EarlyFailures, parameters.LookIntervalHours, early.Ratio, isFirstBetter: early.Ratio.Value < 1, EarlyMethod) with
            {
                // What so few could never call is not tested, and takes nothing from the others (Tarone 1990).
                PValue = early.SmallestPValue <= 1 - parameters.Confidence ? early.PValue : null,
            };
        }

        PartNumberComparison Described(PartNumberMeasure measure, double hours, IntervalEstimate ratio, bool isFirstBetter, string method)
        {
            // Lives are told as better over worse, early failures as worse over better: times above one either way.
            var isRatioAsTold = isFirstBetter == (measure == PartNumberMeasure.Life);
            return new PartNumberComparison
            {
                Better = (isFirstBetter ? first : second).PartNumber,
                Worse = (isFirstBetter ? second : first).PartNumber,
                Measure = measure,
                Hours = hours,
                Times = Figures.Times(
                    isRatioAsTold ? ratio : Inverse(ratio), parameters.Confidence, first.Fitted.Failures + second.Fitted.Failures,
                    first.Fitted.Count + second.Fitted.Count, method),
            };
        }
    }

    private static IntervalEstimate Inverse(IntervalEstimate ratio) =>
        new(1 / ratio.Value, new Interval(1 / ratio.Interval.Upper, 1 / ratio.Interval.Lower, ratio.Interval.Confidence));

    private static IReadOnlyList<UnitLives> Units(PartNumberGroup first, PartNumberGroup second) =>
        [.. first.ByAircraft.Keys.Union(second.ByAircraft.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(a => new UnitLives(first.ByAircraft.GetValueOrDefault(a, []), second.ByAircraft.GetValueOrDefault(a, [])))];
}
