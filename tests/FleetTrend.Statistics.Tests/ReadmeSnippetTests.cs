using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests;

public sealed class ReadmeSnippetTests
{
    // The snippet of src/FleetTrend.Statistics/README.md; it must give an estimate (closed-form check: S at B10 is 0.9).
    [Fact]
    public void The_snippet_of_the_readme_gives_an_estimate()
    {
        Life[] gaskets =
        [
            Life.FailedBetween(lastGood: 612.0, foundFailed: 705.5),
            Life.FailedBetween(lastGood: 498.2, foundFailed: 601.0, entry: 310),
            Life.GoodAt(lastGood: 880.4),
            Life.FailedBetween(lastGood: 701.3, foundFailed: 820.0),
        ];

        var fit = LifeFit.Fit(LifeDistribution.Weibull, gaskets);
        var text = fit.Match(
            f => $"B10 {f.Quantile(0.1).Value:F0} h, {f.Failures} failures of {f.Lives} lives",
            reason => reason.Explanation);

        Assert.EndsWith("3 failures of 4 lives", text, StringComparison.Ordinal);
        Assert.Equal(0.9, fit.Value.Model.Survival(fit.Value.Quantile(0.1).Value), 9);
    }
}
