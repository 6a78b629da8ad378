using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Every case names its source in tests/reference/NAME/SOURCE.md; the expected values come from r/lives.R.</summary>
public sealed class LifeFitTests
{
    // NIST/SEMATECH e-Handbook 8.4.1.3 (54 h and, from its script, 55 h); Hahn and Shapiro 1967; Nelson 1982 p. 409, 415 and 318;
    // Meeker and Escobar 1998 chapters 3 and 6; Klein and Moeschberger 1997 (channing); constructed; simulated.
    [Theory]
    [InlineData("nist-8.4.1.3-weibull-54")]
    [InlineData("nist-8.4.1.3-weibull-55")]
    [InlineData("hahn-shapiro-locomotive")]
    [InlineData("turbine-wheels")]
    [InlineData("crack-inspections")]
    [InlineData("generator-fans")]
    [InlineData("heat-exchanger")]
    [InlineData("bleed-system")]
    [InlineData("channing-men")]
    [InlineData("sixteen-lives")]
    [InlineData("sim1-gaskets")]
    public void Weibull_equals_the_reference(string id)
    {
        var source = ReferenceCase.Load(id);
        AssertWeibull(source, LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value);
    }

    // Drawn at random; Nelder-Mead on R's logistic distribution function. For small shapes the scale runs off to nothing, for the best it does not.
    [Fact]
    public void Loglogistic_of_late_entries_only_equals_the_reference()
    {
        var source = ReferenceCase.Load("late-entries-loglogistic");
        var fit = LifeFit.Fit(LifeDistribution.Loglogistic, source.Lives()).Value;
        source.Equal(fit.Shape.Value, "shape");
        source.Equal(fit.Scale.Value, "scale");
        source.Equal(fit.LogLikelihood, "loglik");
    }

    // Finkelstein and Wolfe 1985.
    [Fact]
    public void Weibull_of_the_breast_cosmesis_arm_equals_the_reference()
    {
        var source = ReferenceCase.Load("breast-cosmesis");
        AssertWeibull(source, LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value, "weibull");
    }

    // NIST/SEMATECH e-Handbook 8.4.1.3, published digits.
    [Fact]
    public void The_published_digits_of_the_NIST_handbook_are_met()
    {
        var source = ReferenceCase.Load("nist-8.4.1.3-weibull-55");
        var weibull = LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value;
        Assert.Equal(source.Published("scale"), weibull.Scale.Value, 3);
        Assert.Equal(source.Published("shape"), weibull.Shape.Value, 5);
        Assert.Equal(source.Published("loglik"), weibull.LogLikelihood, 3);
        Assert.Equal(source.Published("aic"), weibull.Aic, 2);
        Assert.Equal(source.Published("mean_life"), weibull.Model.Mean, 3);
        Assert.Equal(source.Published("sd_life"), weibull.Model.StandardDeviation, 3);
        source.Equal(weibull.Model.Mean, "mean_life");
        source.Equal(weibull.Model.StandardDeviation, "sd_life");
        var lognormal = LifeFit.Fit(LifeDistribution.Lognormal, source.Lives()).Value;
        Assert.Equal(source.Published("lognormal_aic"), lognormal.Aic, 2);
        source.Equal(lognormal.Mu.StandardError, "lognormal_se_mu");
        source.Equal(lognormal.Sigma.StandardError, "lognormal_se_sigma");
        var loglogistic = LifeFit.Fit(LifeDistribution.Loglogistic, source.Lives()).Value;
        source.Equal(loglogistic.Scale.Value, "loglogistic_scale");
        source.Equal(loglogistic.Shape.Value, "loglogistic_shape");
        source.Equal(loglogistic.LogLikelihood, "loglogistic_loglik");
    }

    // Nelson 1982 p. 409 (the survival package prints mu 3.6999, sigma 0.7199, log-likelihood -190.73).
    [Fact]
    public void Wheels_looked_at_once_give_the_published_lognormal()
    {
        var source = ReferenceCase.Load("turbine-wheels");
        var fit = LifeFit.Fit(LifeDistribution.Lognormal, source.Lives()).Value;
        Assert.Equal(source.Published("lognormal_mu"), fit.Mu.Value, 4);
        Assert.Equal(source.Published("lognormal_sigma"), fit.Sigma.Value, 4);
        Assert.Equal(source.Published("lognormal_loglik"), fit.LogLikelihood, 2);
    }

    // Hahn and Shapiro 1967; Nelson 1982 p. 409 (current status, where an exponential has no closed form); Nelson 1982 p. 318.
    [Theory]
    [InlineData("nist-8.4.1.3-weibull-55", "lognormal_aic", true)]
    [InlineData("hahn-shapiro-locomotive", "lognormal_loglik", false)]
    [InlineData("turbine-wheels", "lognormal_loglik", false)]
    [InlineData("sixteen-lives", "lognormal_loglik", false)]
    [InlineData("sim1-gaskets", "lognormal_loglik", false)]
    public void Lognormal_equals_the_reference(string id, string measure, bool isAic)
    {
        var source = ReferenceCase.Load(id);
        var fit = LifeFit.Fit(LifeDistribution.Lognormal, source.Lives()).Value;
        source.Equal(fit.Mu.Value, "lognormal_mu");
        source.Equal(fit.Sigma.Value, "lognormal_sigma");
        source.Equal(isAic ? fit.Aic : fit.LogLikelihood, measure);
    }

    // Constructed; Nelder-Mead on R's own distribution functions.
    [Fact]
    public void Loglogistic_with_every_kind_of_life_equals_the_reference()
    {
        var source = ReferenceCase.Load("sixteen-lives");
        var fit = LifeFit.Fit(LifeDistribution.Loglogistic, source.Lives()).Value;
        source.Equal(fit.Scale.Value, "loglogistic_scale");
        source.Equal(fit.Shape.Value, "loglogistic_shape");
        source.Equal(fit.LogLikelihood, "loglogistic_loglik");
    }

    [Theory]
    [InlineData("hahn-shapiro-locomotive", "exponential_mean")]
    [InlineData("generator-fans", "exponential_mean")]
    [InlineData("turbine-wheels", "exponential_scale")]
    public void Exponential_equals_the_reference(string id, string scale)
    {
        var source = ReferenceCase.Load(id);
        var fit = LifeFit.Fit(LifeDistribution.Exponential, source.Lives()).Value;
        source.Equal(fit.Scale.Value, scale);
        source.Equal(fit.LogLikelihood, "exponential_loglik");
        Assert.Equal(1, fit.Shape.Value);
        Assert.True(fit.Scale.Interval.Contains(fit.Scale.Value));
    }

    // Nelson 1982 p. 409 and 415: what comes of taking the age at which it was found as the age at which it failed.
    [Theory]
    [InlineData("turbine-wheels")]
    [InlineData("crack-inspections")]
    public void The_age_found_is_not_taken_for_the_age_failed(string id)
    {
        var source = ReferenceCase.Load(id);
        var fit = LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value;
        Assert.True(Math.Abs(fit.Shape.Value / source.Expected("wrong_shape") - 1) > 0.2);
    }

    // Klein and Moeschberger 1997; constructed; simulated: what comes of forgetting that a life was first seen late.
    [Theory]
    [InlineData("channing-men")]
    [InlineData("sixteen-lives")]
    [InlineData("sim1-gaskets")]
    public void An_entry_age_is_not_forgotten(string id)
    {
        var source = ReferenceCase.Load(id);
        var fit = LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value;
        Assert.True(Math.Abs(fit.Scale.Value / source.Expected("untruncated_scale") - 1) > 0.02);
        Life[] forgotten = [.. source.Lives().Select(l => new Life(l.Lower, l.Upper, 0, l.Count))];
        var wrong = LifeFit.Fit(LifeDistribution.Weibull, forgotten).Value;
        source.Equal(wrong.Shape.Value, "untruncated_shape");
        source.Equal(wrong.Scale.Value, "untruncated_scale");
    }

    // Profile limits of 1 - S(age + ahead)/S(age), by nested one-dimensional searches in R.
    [Theory]
    [InlineData("nist-8.4.1.3-weibull-54", 200, 100)]
    [InlineData("sixteen-lives", 600, 100)]
    [InlineData("sim1-gaskets", 500, 100)]
    public void Conditional_failure_equals_the_reference(string id, double age, double ahead)
    {
        var source = ReferenceCase.Load(id);
        var estimate = LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value.ConditionalFailure(age, ahead);
        source.Equal(estimate.Value, "conditional");
        Equal(source, estimate.Interval, ["conditional_interval"]);
    }

    // USAF Weibull Analysis Handbook AFWAL-TR-83-2079: two bases.
    [Fact]
    public void Bases_fitted_apart_give_the_likelihood_ratio_of_the_reference()
    {
        var source = ReferenceCase.Load("bleed-system");
        var isD = source.Counts("base_d");
        var (all, d, other) = (Fit(_ => true), Fit(i => isD[i] == 1), Fit(i => isD[i] == 0));
        AssertWeibull(source, d, "base_d");
        AssertWeibull(source, other, "other");
        source.Equal(2 * (d.LogLikelihood + other.LogLikelihood - all.LogLikelihood), "lr_two_bases");

        LifeFit Fit(Func<int, bool> rows) => LifeFit.Fit(LifeDistribution.Weibull, source.Lives(rows)).Value;
    }

    internal static void AssertWeibull(ReferenceCase source, LifeFit fit, params string[] path)
    {
        source.Equal(fit.Shape.Value, [.. path, "shape"]);
        source.Equal(fit.Scale.Value, [.. path, "scale"]);
        source.Equal(fit.LogLikelihood, [.. path, "loglik"]);
        source.Equal(fit.Aic, [.. path, "aic"]);
        source.Equal(fit.Shape.StandardError, [.. path, "se_shape"]);
        source.Equal(fit.Scale.StandardError, [.. path, "se_scale"]);
        source.Equal(fit.LogCovariance.LogScale, [.. path, "var_logscale"]);
        source.Equal(fit.LogCovariance.LogShape, [.. path, "var_logshape"]);
        source.Equal(fit.LogCovariance.Mixed, [.. path, "cov_logscale_logshape"]);
        source.Equal(fit.LogCovariance.Mixed * fit.Shape.Value * fit.Scale.Value, [.. path, "cov_shape_scale"]);
        Equal(source, fit.Shape.WaldInterval, [.. path, "shape_wald"]);
        Equal(source, fit.Scale.WaldInterval, [.. path, "scale_wald"]);
        if (!source.Has([.. path, "quantile_p"])) return;
        var shares = source.ExpectedAll([.. path, "quantile_p"]);
        source.Equal(shares.Select(p => fit.QuantileWald(p).Interval.Lower), [.. path, "quantile_wald_lower"]);
        source.Equal(shares.Select(p => fit.QuantileWald(p).Interval.Upper), [.. path, "quantile_wald_upper"]);
        source.Equal(shares.Select(p => fit.Quantile(p).Value), [.. path, "quantile"]);
        if (!source.Has([.. path, "shape_interval"])) return;
        Equal(source, fit.Shape.Interval, [.. path, "shape_interval"]);
        Equal(source, fit.Scale.Interval, [.. path, "scale_interval"]);
        foreach (var p in shares)
            Equal(source, fit.Quantile(p).Interval, [.. path, FormattableString.Invariant($"quantile_interval_{p}")]);
        if (!source.Has([.. path, "age"]) || !source.Has([.. path, "survival"])) return;
        var ages = source.ExpectedAll([.. path, "age"]);
        source.Equal(ages.Select(t => fit.Survival(t).Value), [.. path, "survival"]);
        foreach (var t in ages)
        {
            Equal(source, fit.Survival(t).Interval, [.. path, FormattableString.Invariant($"survival_interval_{t}")]);
            Assert.Equal(1 - fit.Survival(t).Interval.Lower, fit.Cdf(t).Interval.Upper, 9);
        }
    }

    private static void Equal(ReferenceCase source, Interval interval, string[] path) =>
        source.Equal([interval.Lower, interval.Upper], path);
}
