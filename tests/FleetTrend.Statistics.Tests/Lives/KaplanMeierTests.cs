using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Sources in tests/reference/NAME/SOURCE.md; expected values from r/survival.R.</summary>
public sealed class KaplanMeierTests
{
    // NIST/SEMATECH e-Handbook 8.2.1.5; Freireich and others 1963; Therneau and Grambsch 2000.
    [Theory]
    [InlineData("nist-8.2.1.5-kaplan-meier")]
    [InlineData("freireich-6mp")]
    [InlineData("six-rows-with-ties")]
    public void Points_equal_the_reference(string id)
    {
        var source = ReferenceCase.Load(id);
        var points = KaplanMeier.Estimate(source.Lives()).Value.Points;
        source.Equal(points.Select(p => p.Age), "age");
        source.Equal(points.Select(p => p.AtRisk), "at_risk");
        source.Equal(points.Select(p => p.Failures), "failures");
        source.Equal(points.Select(p => p.Survival), "survival");
        source.Equal(points.Select(p => p.StandardError), "se");
        source.Equal(points.Select(p => p.CumulativeHazard), "hazard");
        source.Equal(points.Select(p => p.CumulativeHazardStandardError), "hazard_se");
        if (!source.Has("plain")) return;
        AssertLimits(source, points.Select(p => p.PlainLimits), "plain");
        AssertLimits(source, points.Select(p => p.LogLimits), "log");
        AssertLimits(source, points.Select(p => p.LogLogLimits), "loglog");
    }

    [Fact]
    public void Median_and_restricted_mean_equal_the_reference()
    {
        var source = ReferenceCase.Load("freireich-6mp");
        var estimate = KaplanMeier.Estimate(source.Lives()).Value;
        source.Equal(estimate.Quantile(0.5).Value, "median");
        source.Equal(estimate.RestrictedMean(35).Mean, "mean_35");
        source.Equal(estimate.RestrictedMean(35).StandardError, "mean_35_se");
        Assert.Equal(NotEstimableKind.TooFewEvents, estimate.Quantile(0.9).Reason!.Kind);
    }

    // Klein and Moeschberger 1997, data channing.
    [Theory]
    [InlineData(1, "men")]
    [InlineData(2, "women")]
    public void Late_entry_equals_the_reference(int group, string name)
    {
        var source = ReferenceCase.Load("channing-late-entry");
        var groups = source.Counts("group");
        var estimate = KaplanMeier.Estimate(source.Lives(i => groups[i] == group)).Value;
        source.Equal(source.ExpectedAll("age").Select(estimate.Survival), name, "survival");
        source.Equal(source.ExpectedAll("age").Select(t => estimate.PointAt(t)?.StandardError ?? 0), name, "se");
    }

    // Clopper and Pearson 1934, by R's binom.test.
    [Fact]
    public void Exact_limits_without_censoring_are_Clopper_Pearson()
    {
        var source = ReferenceCase.Load("exact-survival-limits");
        var points = KaplanMeier.Estimate([.. Enumerable.Range(1, 12).Select(i => Life.FailedAt(i))]).Value.Points;
        AssertLimits(source, points.Select(p => p.ExactLimits));
    }

    // The estimate that it is a special case of.
    [Fact]
    public void Turnbull_on_exact_lives_is_Kaplan_Meier()
    {
        var source = ReferenceCase.Load("channing-late-entry");
        var (lives, groups) = (source.Lives(), source.Counts("group"));
        Life[] women = [.. lives.Where((_, i) => groups[i] == 2)];
        var (product, turnbull) = (KaplanMeier.Estimate(women).Value, TurnbullEstimate.Estimate(women).Value);
        Assert.All(product.Points, p => Assert.Equal(1 - p.Survival, turnbull.CdfBounds(p.Age).Least, 1e-7));
    }

    [Fact]
    public void An_interval_is_refused_and_nothing_gives_a_reason()
    {
        Assert.Throws<ArgumentException>(() => KaplanMeier.Estimate([new Life(1, 2)]));
        Assert.Equal(NotEstimableKind.NothingObserved, KaplanMeier.Estimate([]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, KaplanMeier.Estimate([Life.GoodAt(5)]).Reason!.Kind);
        Assert.Equal(0, Assert.Single(KaplanMeier.Estimate([Life.FailedAt(5), Life.GoodAt(5, 5)]).Value.Points).Survival);
    }

    private static void AssertLimits(ReferenceCase source, IEnumerable<Interval> limits, params string[] path)
    {
        Interval[] all = [.. limits];
        source.Equal(all.Select(l => l.Lower), [.. path, "lower"]);
        source.Equal(all.Select(l => l.Upper), [.. path, "upper"]);
    }
}
