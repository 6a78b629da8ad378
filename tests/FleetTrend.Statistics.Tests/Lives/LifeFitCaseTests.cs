using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>The further numbers of each published case. Sources in tests/reference/NAME/SOURCE.md; expected values from r/lives.R.</summary>
public sealed class LifeFitCaseTests
{
    // NIST/SEMATECH e-Handbook 8.4.1.3: mean life of the fit.
    [Fact]
    public void Mean_life_of_the_NIST_test_equals_the_reference()
    {
        var source = ReferenceCase.Load("nist-8.4.1.3-weibull-54");
        var fit = Weibull(source.Lives());
        source.Equal(fit.Model.Mean, "mean_life");
        Assert.Equal(source.Published("scale"), fit.Scale.Value, 1e-3);
        Assert.Equal(source.Published("shape"), fit.Shape.Value, 2e-4);
    }

    // R package KMsurv, data bcdeter: each arm by itself and both as one.
    [Fact]
    public void Each_arm_and_both_as_one_equal_the_reference()
    {
        var source = ReferenceCase.Load("breast-cosmesis-two-arms");
        var arm = source.Counts("arm");
        LifeFitTests.AssertWeibull(source, Weibull(source.Lives(i => arm[i] == 1)), "arm_1", "weibull");
        LifeFitTests.AssertWeibull(source, Weibull(source.Lives(i => arm[i] == 2)), "arm_2", "weibull");
        LifeFitTests.AssertWeibull(source, Weibull(source.Lives()), "pooled");
    }

    // Simulated with seed 20240603: each method of repair by itself.
    [Fact]
    public void Each_repair_and_both_as_one_equal_the_reference()
    {
        var source = ReferenceCase.Load("sim3-repairs");
        var method = source.Text("method");
        LifeFitTests.AssertWeibull(source, Weibull(source.Lives(i => method[i] == "stop_drilled")), "stop_drilled");
        LifeFitTests.AssertWeibull(source, Weibull(source.Lives(i => method[i] == "weld_repaired")), "weld_repaired");
        source.Equal(Weibull(source.Lives()).LogLikelihood, "pooled_loglik");
    }

    // Nelson 1982 p. 415, printed in days by the survival package's saved test output; chi-square of the eight looks by hand.
    [Fact]
    public void Crack_inspections_equal_the_published_fit_in_days()
    {
        var source = ReferenceCase.Load("crack-inspections");
        double[] days = [0, .. source.ExpectedAll("days"), double.PositiveInfinity];
        var counts = source.Counts("count");
        var fit = Weibull([.. counts.Select((n, i) => new Life(days[i], days[i + 1], 0, n))]);
        LifeFitTests.AssertWeibull(source, fit, "in_days");
        Assert.Equal(source.Published("mu_days"), fit.Mu.Value, 1e-4);
        Assert.Equal(source.Published("se_mu_days"), fit.Mu.StandardError, 1e-4);
        Assert.Equal(source.Published("log_sigma"), Math.Log(fit.Sigma.Value), 1e-4);
        Assert.Equal(source.Published("se_log_sigma"), fit.Sigma.StandardError / fit.Sigma.Value, 1e-4);
        Assert.Equal(source.Published("loglik"), fit.LogLikelihood, 0.05);
        Assert.Equal(source.Published("b10_days"), fit.Quantile(0.1).Value, 0.05);
        Assert.Equal(source.Published("median_days"), fit.Quantile(0.5).Value, 0.05);
        var expected = counts.Select((n, i) => 167 * (fit.Model.Survival(days[i]) - fit.Model.Survival(days[i + 1]))).ToArray();
        source.Equal(counts.Zip(expected).Sum(p => (p.First - p.Second) * (p.First - p.Second) / p.Second), "pearson");
        source.Equal(2 * counts.Zip(expected).Sum(p => p.First * Math.Log(p.First / p.Second)), "deviance");
        var inMonths = Weibull(source.Lives());
        Assert.Equal(source.Published("shape"), inMonths.Shape.Value, 5e-4);
        Assert.Equal(source.Published("scale_months"), inMonths.Scale.Value, 0.01);
    }

    // Nelson 1982 p. 409: the digits recomputed for one look per wheel; the exponential's likelihood and the gain over it.
    [Fact]
    public void Wheels_looked_at_once_equal_the_figures_of_the_source()
    {
        var source = ReferenceCase.Load("turbine-wheels");
        var (weibull, exponential) = (Weibull(source.Lives()), Exponential(source.Lives()));
        source.Equal(1 / exponential.Scale.Value, "exponential_rate");
        source.Equal(2 * (weibull.LogLikelihood - exponential.LogLikelihood), "lr_exponential");
        Assert.Equal(source.Published("shape"), weibull.Shape.Value, 4);
        Assert.Equal(source.Published("scale"), weibull.Scale.Value, 3);
        Assert.Equal(source.Published("loglik"), weibull.LogLikelihood, 3);
        Assert.Equal(source.Published("median"), weibull.Quantile(0.5).Value, 2);
        Assert.Equal(source.Published("exponential_loglik"), exponential.LogLikelihood, 3);
        var lognormal = LifeFit.Fit(LifeDistribution.Lognormal, source.Lives()).Value;
        source.Equal(lognormal.Mu.StandardError, "lognormal_se_mu");
    }

    // Nelson 1982 p. 318: gain of the Weibull over the exponential.
    [Fact]
    public void Fans_equal_the_figures_of_the_source()
    {
        var source = ReferenceCase.Load("generator-fans");
        var (weibull, exponential) = (Weibull(source.Lives()), Exponential(source.Lives()));
        source.Equal(2 * (weibull.LogLikelihood - exponential.LogLikelihood), "lr_exponential");
        source.Equal(source.Lives().Sum(l => l.Lower * l.Count), "total_time");
        Assert.Equal(source.Published("shape"), weibull.Shape.Value, 4);
        Assert.Equal(source.Published("scale"), weibull.Scale.Value, 0);
        Assert.Equal(source.Published("exponential_mean"), exponential.Scale.Value, 0);
    }

    // USAF Weibull Analysis Handbook AFWAL-TR-83-2079: 19 failures among 2256 units.
    [Fact]
    public void Bleed_system_has_the_units_and_failures_of_the_handbook()
    {
        var source = ReferenceCase.Load("bleed-system");
        var fit = Weibull(source.Lives());
        source.Equal(fit.Failures, "failures");
        source.Equal(fit.Lives, "units");
    }

    // Nelson 1982 p. 409 and 415; simulated with seed 20240601: a fit to found ages is another number than the fit above.
    [Theory]
    [InlineData("turbine-wheels", "wrong")]
    [InlineData("crack-inspections", "wrong")]
    [InlineData("sim1-gaskets", "found")]
    public void Found_ages_given_as_failure_ages_equal_the_wrong_reference(string id, string prefix)
    {
        var source = ReferenceCase.Load(id);
        var wrong = Weibull([.. source.Lives().Select(l => l.Failed ? Life.FailedAt(l.Upper, l.Entry, l.Count) : l)]);
        source.Equal(wrong.Shape.Value, $"{prefix}_shape");
        source.Equal(wrong.Scale.Value, $"{prefix}_scale");
        if (source.Has($"{prefix}_loglik")) source.Equal(wrong.LogLikelihood, $"{prefix}_loglik");
        if (prefix == "found") return;
        Assert.Equal(source.Published("found_shape"), wrong.Shape.Value, 0.006);
        Assert.Equal(source.Published("found_scale"), wrong.Scale.Value, 0.006);
    }

    // Simulated with seed 20240601: subsets, and what other treatments of the same rows give.
    [Fact]
    public void Simulated_gaskets_equal_the_reference_in_every_subset()
    {
        var source = ReferenceCase.Load("sim1-gaskets");
        var (lives, reason, cylinder) = (source.Lives(), source.Text("reason"), source.Counts("cylinder"));
        var all = Weibull(lives);
        source.Equal(all.Lives, "lives");
        source.Equal(all.Failures, "failed");
        source.Equal(reason.Count(r => r == "other"), "removed");
        source.Equal(reason.Count(r => r == "end"), "still_good");
        source.Equal(lives.Count(l => l.Entry > 0), "late_entries");
        LifeFitTests.AssertWeibull(source, Weibull([.. lives.Where(l => l.Entry == 0)]), "from_new", "weibull");
        var forgotten = Weibull([.. lives.Select(l => new Life(l.Lower, l.Upper, 0, l.Count))]);
        source.Equal(forgotten.LogLikelihood, "untruncated_loglik");
        var middle = Weibull([.. lives.Select(l => l.Failed ? Life.FailedAt((l.Lower + l.Upper) / 2, l.Entry) : l)]);
        source.Equal(middle.Shape.Value, "middle_shape");
        source.Equal(middle.Scale.Value, "middle_scale");
        source.Equal(middle.LogLikelihood, "middle_loglik");
        LifeFit[] by = [.. Enumerable.Range(1, 4).Select(c => Weibull(source.Lives(i => cylinder[i] == c)))];
        source.Equal(by.Select(f => f.Shape.Value), "cylinder_shape");
        source.Equal(by.Select(f => f.Scale.Value), "cylinder_scale");
        source.Equal(by.Select(f => f.LogLikelihood), "cylinder_loglik");
        source.Equal(by.Select(f => f.Shape.StandardError), "cylinder_se_shape");
        source.Equal(by.Select(f => f.Scale.StandardError), "cylinder_se_scale");
        var exponential = Exponential(lives);
        source.Equal(1 / exponential.Scale.Value, "exponential_rate");
        source.Equal(exponential.LogLikelihood, "exponential_loglik");
        source.Equal(2 * (all.LogLikelihood - exponential.LogLikelihood), "lr_shape_one");
    }

    private static LifeFit Weibull(IReadOnlyList<Life> lives) => LifeFit.Fit(LifeDistribution.Weibull, lives).Value;

    private static LifeFit Exponential(IReadOnlyList<Life> lives) => LifeFit.Fit(LifeDistribution.Exponential, lives).Value;
}
