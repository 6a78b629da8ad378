using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Closed forms and numeric integrals from R: tests/reference/life-functions.</summary>
public sealed class LifeModelTests
{
    private readonly ReferenceCase source = ReferenceCase.Load("life-functions");

    [Theory]
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    [InlineData(LifeDistribution.Loglogistic, "loglogistic")]
    public void Functions_equal_the_closed_forms_and_integrals(LifeDistribution distribution, string name)
    {
        var model = new LifeModel(distribution, source.Parameter("scale"), source.Parameter("shape"));
        var ages = source.Parameters("age");
        source.Equal(model.Mean, name, "mean");
        source.Equal(source.ExpectedAll("weibull", "quantile_p").Select(model.Quantile), name, "quantile");
        source.Equal(ages.Select(model.Cdf), name, "cdf");
        source.Equal(ages.Select(model.MeanResidualLife), name, "mean_further_life");
        Assert.All(ages, t => Assert.Equal(1, model.Cdf(t) + model.Survival(t), 12));
        if (source.Has(name, "sd")) source.Equal(model.StandardDeviation, name, "sd");
        if (source.Has(name, "hazard")) source.Equal(ages.Select(model.Hazard), name, "hazard");
    }

    // Closed forms in R (tests/reference/weibull-functions), to nine digits.
    [Fact]
    public void Weibull_functions_equal_the_closed_forms()
    {
        var weibull = ReferenceCase.Load("weibull-functions");
        var model = new LifeModel(LifeDistribution.Weibull, weibull.Parameter("scale"), weibull.Parameter("shape"));
        var ages = weibull.Parameters("age");
        weibull.Equal(model.Mean, "mean");
        weibull.Equal(model.StandardDeviation, "sd");
        weibull.Equal(model.Mode, "mode");
        weibull.Equal(weibull.ExpectedAll("quantile_p").Select(model.Quantile), "quantile");
        weibull.Equal(ages.Select(model.Cdf), "cdf");
        weibull.Equal(ages.Select(model.Hazard), "hazard");
        weibull.Equal(ages.Select(model.CumulativeHazard), "cumulative_hazard");
        weibull.Equal(ages.Select(t => model.ConditionalFailure(t, weibull.Parameter("ahead"))), "conditional_failure");
        weibull.Equal(ages.Select(model.MeanResidualLife), "mean_further_life");
    }

    // Definition: the density is lower a little before and after its mode; it falls from the start for shapes of 1 and less.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    [InlineData(LifeDistribution.Loglogistic)]
    public void The_mode_is_where_the_density_is_highest(LifeDistribution distribution)
    {
        var model = new LifeModel(distribution, 900, 2.2);
        Assert.True(model.Density(model.Mode) > Math.Max(model.Density(model.Mode * 0.999), model.Density(model.Mode * 1.001)));
        if (distribution != LifeDistribution.Lognormal) Assert.Equal(0, new LifeModel(distribution, 900, 0.9).Mode);
    }

    [Fact]
    public void Conditional_failure_equals_the_closed_form() => source.Equal(
        source.Parameters("age").Select(
            t => new LifeModel(LifeDistribution.Weibull, source.Parameter("scale"), source.Parameter("shape"))
                .ConditionalFailure(t, source.Parameter("ahead"))),
        "weibull",
        "conditional_failure");

    // By hand: the exponential forgets its age.
    [Fact]
    public void An_exponential_life_has_no_memory()
    {
        var model = new LifeModel(LifeDistribution.Exponential, 1250);
        Assert.Equal(1250, model.MeanResidualLife(5000), 8);
        Assert.Equal(model.Cdf(100), model.ConditionalFailure(7000, 100), 12);
        Assert.Equal(1 / 1250.0, model.Hazard(0), 12);
    }

    // By hand: the Weibull hazard at very high age is nearly constant over the further life, so the mean is one over it.
    [Fact]
    public void Further_life_far_out_in_the_tail_is_finite()
    {
        var model = new LifeModel(LifeDistribution.Weibull, 100, 12);
        Assert.Equal(1 / model.Hazard(1000), model.MeanResidualLife(1000), 1e-6);
        Assert.InRange(model.MeanResidualLife(169), 1 / model.Hazard(169) * 0.99, 1 / model.Hazard(169));
    }

    [Fact]
    public void A_heavy_tail_has_an_infinite_mean() =>
        Assert.Equal(double.PositiveInfinity, new LifeModel(LifeDistribution.Loglogistic, 500, 0.9).MeanResidualLife(10));

    [Fact]
    public void Parameters_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LifeModel(LifeDistribution.Weibull, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LifeModel(LifeDistribution.Weibull, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LifeModel(LifeDistribution.Exponential, 1, 2));
        var model = new LifeModel(LifeDistribution.Weibull, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => model.Quantile(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => model.Survival(-1));
    }
}
