using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>Part life at one base against the other bases, and what follows when all comparisons are known.</summary>
internal static class BaseContrasts
{
    private const string MedianMethod =
        "ratio of fitted medians, aircraft independent and not their parts: jackknife over aircraft, Student's t (Lipsitz, Dear and Zhao 1994)";

    private const string HereMethod = "fitted median, profile-likelihood limits (Meeker and Escobar 1998)";

    private const string EarlyMethod =
        "early failures given their sum, mid-P (Przyborowski and Wilenski 1940; Lancaster 1961), with the spread between aircraft";

    /// <summary>The contrast with its p-values, or null where nothing can be compared; what it finds is settled with all others.</summary>
    public static BaseContrast? Compare(
        string law, LifeModel course, FittedLives here, FittedLives elsewhere, TrendParameters parameters)
    {
        if (here.Count == 0 || elsewhere.Count == 0) return null;
        var (distribution, age) = (LifeFits.Family(law), parameters.LookIntervalHours);
        var contrast = EarlyAndMedianContrast.Estimate(
            distribution, course, here.Aircraft, elsewhere.Aircraft, age, parameters.Confidence);
        Outcome<LifeContrast> median = Math.Min(here.Failures, elsewhere.Failures) < parameters.MinimumFailuresForFit
            ? new NotEstimable(NotEstimableKind.TooFewEvents, here.Failures, "Too few failures.")
            : contrast.Median;
        contrast.Early.TryGetValue(out var early);
        if (!median.IsEstimated && early is null) return null;
        return new BaseContrast
        {
            MedianRatio = Ratio(median, here, elsewhere, parameters),
            MedianHere = median.IsEstimated ? Median(median.Value.First, here, parameters) : null,
            MedianElsewhere = median.IsEstimated ? Median(median.Value.Second, elsewhere, parameters) : null,
            MedianFromHours = contrast.MedianFrom,
            Law = law,
            EarlyHours = age,
            EarlyHere = early is null ? null : LifeFigures.Early(early.First, here, parameters),
            EarlyElsewhere = early is null ? null : LifeFigures.Early(early.Second, elsewhere, parameters),
            EarlyRatio = early is null ? null : Ratio(early.Ratio, EarlyMethod, here, parameters),
            OtherLives = elsewhere.Count,
            OtherFailures = elsewhere.Failures,
            MedianTest = median.IsEstimated ? new ContrastTest(median.Value.PValue, 1, ContrastFinding.NoneShown) : null,
            EarlyTest = early is not null && early.SmallestPValue <= parameters.FalseDiscoveryRate
                ? new ContrastTest(early.PValue, 1, ContrastFinding.NoneShown)
                : null,
        };
    }

    /// <summary>Settles what a contrast found, allowing for both tests of all contrasts of the fleet together.</summary>
    public static BaseContrast Settle(BaseContrast contrast, TestFamily tests, TrendParameters parameters)
    {
        return contrast with
        {
            MedianTest = Settled(contrast.MedianTest, contrast.MedianRatio, isWorseAbove: false),
            EarlyTest = Settled(contrast.EarlyTest, contrast.EarlyRatio, isWorseAbove: true),
        };

        ContrastTest? Settled(ContrastTest? test, Figure? ratio, bool isWorseAbove)
        {
            if (test is null) return null;
            var value = tests.QValue(test.PValue);
            // A ratio without a value is one to none at all: it lies above any number.
            var isAbove = ratio?.Value is not { } r || r > 1;
            return test with
            {
                QValue = value,
                Finding = value > parameters.FalseDiscoveryRate ? ContrastFinding.NoneShown
                    : isAbove == isWorseAbove ? ContrastFinding.Worse
                    : ContrastFinding.Better,
            };
        }
    }

    /// <summary>The tests of a contrast; none where there is no contrast.</summary>
    public static IEnumerable<ContrastTest> Tests(BaseContrast? contrast) =>
        new[] { contrast?.MedianTest, contrast?.EarlyTest }.OfType<ContrastTest>();

    private static Figure Ratio(Outcome<LifeContrast> median, FittedLives here, FittedLives elsewhere, TrendParameters parameters) =>
        median.Match(
            m => Ratio(m.MedianRatio, MedianMethod, here, parameters),
            reason => new Figure
            {
                Confidence = parameters.Confidence,
                Unit = "",
                Events = here.Failures,
                Lives = here.Count,
                Method = MedianMethod,
                NotEnoughData = "not enough data to compare the medians: "
                    + $"{NumberWords.Count(here.Failures, "failure", "failures")} here, {NumberWords.Count(elsewhere.Failures)} elsewhere",
            });

    private static Figure Ratio(IntervalEstimate ratio, string method, FittedLives here, TrendParameters parameters)
    {
        var figure = Figures.Times(ratio, parameters.Confidence, here.Failures, here.Count, method);
        return figure with { NotEnoughData = figure.Value is null ? "none elsewhere, so that only a lower limit exists" : null };
    }

    private static Figure Median(LifeFit fit, FittedLives lives, TrendParameters parameters) =>
        LifeFigures.Age(fit.Quantile(0.5), lives, parameters, HereMethod);
}
