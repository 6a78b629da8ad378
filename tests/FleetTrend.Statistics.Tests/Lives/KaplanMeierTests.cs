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
        if (!source.Has("logit")) return;
        AssertLimits(source, points.Select(p => p.LogitLimits), "logit");
        AssertLimits(source, points.Select(p => p.ArcsineLimits), "arcsine");
    }

    // NIST/SEMATECH e-Handbook 8.4.1.3 (its script prints the standard errors); Nelson 1982 p. 318.
    [Theory]
    [InlineData("nist-8.4.1.3-weibull-55")]
    [InlineData("generator-fans")]
    public void Points_beside_a_fit_equal_the_reference(string id)
    {
        var source = ReferenceCase.Load(id);
        var points = KaplanMeier.Estimate(source.Lives()).Value.Points;
        source.Equal(points.Select(p => p.Age), "km", "age");
        source.Equal(points.Select(p => p.Survival), "km", "survival");
        source.Equal(points.Select(p => p.StandardError), "km", "se");
        AssertLimits(source, points.Select(p => p.LogLimits), "km", "log");
    }

    // Freireich and others 1963, published survival to three digits.
    [Fact]
    public void The_published_survival_is_met()
    {
        var source = ReferenceCase.Load("freireich-6mp");
        var points = KaplanMeier.Estimate(source.Lives()).Value.Points;
        Assert.All(points.Zip(source.PublishedAll("survival")), p => Assert.Equal(p.Second, p.First.Survival, 0.0006));
    }

    // Therneau and Grambsch 2000, data set 1: failures at 6 one after another, 1/6 + 1/4 + 1/3; at 8 nothing fails.
    [Fact]
    public void Ties_one_after_another_and_ages_between_failures()
    {
        var source = ReferenceCase.Load("six-rows-with-ties");
        var estimate = KaplanMeier.Estimate(source.Lives()).Value;
        source.Equal(estimate.Points.Select(p => p.FlemingHarringtonHazard), "tied_hazard");
        source.Equal(estimate.AtRisk(8), "at_risk_at_8");
        source.Equal(estimate.Survival(8), "survival_at_8");
        source.Equal(estimate.Points.Take(2).Select(p => p.StandardError * p.StandardError), "survival_influence_variance");
    }

    // NIST/SEMATECH e-Handbook 8.2.1.5, the modified form (formula from memory).
    [Fact]
    public void Plotting_positions_equal_the_modified_form()
    {
        var source = ReferenceCase.Load("nist-8.2.1.5-kaplan-meier");
        source.Equal(KaplanMeier.Estimate(source.Lives()).Value.PlottingPositions().Value, "modified");
        var late = KaplanMeier.Estimate([Life.FailedAt(5, entry: 1)]).Value;
        Assert.Equal(NotEstimableKind.NoInformation, late.PlottingPositions().Reason!.Kind);
    }

    // Nelson 1982 p. 415 (binomial errors where all are looked at together); Meeker and Escobar 1998 chapter 3 (Greenwood).
    [Theory]
    [InlineData("crack-inspections")]
    [InlineData("heat-exchanger")]
    public void A_life_table_equals_the_reference(string id)
    {
        var source = ReferenceCase.Load(id);
        var points = KaplanMeier.EstimateLifeTable(source.Lives()).Value.Points;
        source.Equal(points.Select(p => 1 - p.Survival), "cdf");
        source.Equal(points.Select(p => p.StandardError), "cdf_se");
    }

    // Meeker and Escobar 1998 chapter 3: plant 1, 100 tubes with 1, 2 and 2 cracked.
    [Fact]
    public void One_plant_alone_is_a_binomial_share()
    {
        var source = ReferenceCase.Load("heat-exchanger");
        var plant = source.Counts("plant");
        var points = KaplanMeier.EstimateLifeTable(source.Lives(i => plant[i] == 1)).Value.Points;
        source.Equal(points.Select(p => 1 - p.Survival), "plant_1_cdf");
    }

    // Turnbull with common looks and late entries is the same table.
    [Fact]
    public void A_life_table_with_late_entries_is_the_Turnbull_estimate_and_odd_looks_are_refused()
    {
        Life[] lives =
        [
            new(100, 200, 100, 4), Life.GoodAt(200, 100, 6), new(0, 100), new(100, 200), Life.GoodAt(200, 0, 3),
        ];
        var (table, turnbull) = (KaplanMeier.EstimateLifeTable(lives).Value, TurnbullEstimate.Estimate(lives).Value);
        Assert.Equal(turnbull.Masses.Take(2).Select(m => m.Cdf), table.Points.Select(p => 1 - p.Survival), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(NotEstimableKind.NoInformation, KaplanMeier.EstimateLifeTable([.. lives, Life.GoodAt(150)]).Reason!.Kind);
    }

    [Fact]
    public void Median_and_restricted_mean_equal_the_reference()
    {
        var source = ReferenceCase.Load("freireich-6mp");
        var estimate = KaplanMeier.Estimate(source.Lives()).Value;
        source.Equal(estimate.Quantile(0.5).Value, "median");
        var median = estimate.Quantile(0.5, p => p.LogLimits).Value;
        source.Equal(median.Value, "median");
        source.Equal([median.Interval.Lower, median.Interval.Upper], "median_limits");
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
        var lives = source.Lives(i => groups[i] == group);
        var estimate = KaplanMeier.Estimate(lives).Value;
        // R's summary gives the number at risk at the first age at or after the one asked for at which anyone left.
        source.Equal(
            source.ExpectedAll("age").Select(t => estimate.AtRisk(lives.Where(l => l.Lower >= t).Min(l => l.Lower))), name, "at_risk");
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
