using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class GammaPriorTests
{
    [Fact] // NIST/SEMATECH e-Handbook 8.2.5: median 600 h, 5 percent below 250 h: a = 2.863055, b = 1522.506.
    public void Prior_from_two_quantiles()
    {
        var reference = ReferenceCase.Load("nist-8.2.5-gamma-prior");
        var prior = GammaPrior.FromMtbf(reference.Parameter("median"), reference.Parameter("low")).Value;
        reference.Equal(prior.Shape, "shape");
        reference.Equal(prior.Rate, "rate");
        Assert.Equal(reference.Published("shape"), prior.Shape, 6);
        Assert.Equal(reference.Published("rate"), prior.Rate, 3);
        var distribution = prior.Posterior(new CountExposure(0, 0));
        reference.Equal(1 - distribution.Above(1.0 / 600), "at_median");
        reference.Equal(1 - distribution.Above(1.0 / 250), "at_low");
        // The page's own check uses rounded values of parameters and rates.
        var rounded = new GammaPosterior(2.863, 1522.46);
        reference.Equal([1 - rounded.Above(0.001667), 1 - rounded.Above(0.004)], "rounded");
        Assert.Equal(reference.PublishedAll("rounded"), new[] { 1 - rounded.Above(0.001667), 1 - rounded.Above(0.004) }.Select(p => Math.Round(p, 7)));
    }

    [Fact] // NIST/SEMATECH e-Handbook 8.4.6: after 2 failures in 1909 h, median 901 h, reciprocal mean 827 h, lower limit 600 h.
    public void Posterior_after_two_failures()
    {
        var reference = ReferenceCase.Load("nist-8.4.6-bayes-mtbf");
        var prior = new GammaPrior(reference.Parameter("prior_shape"), reference.Parameter("prior_rate"));
        var distribution = prior.Posterior(new CountExposure((int)reference.Parameter("failures"), reference.Parameter("hours")), 0.9);
        reference.Equal(distribution.Shape, "shape");
        reference.Equal(distribution.Rate, "rate");
        reference.Equal(1 / distribution.RateNotExceededWith(0.5), "median");
        reference.Equal(1 / distribution.Mean, "reciprocal_mean");
        reference.Equal(1 / distribution.RateNotExceededWith(0.8), "lower_80");
        reference.Equal(1 / distribution.RateNotExceededWith(0.9), "lower_90");
        reference.Equal([1 / distribution.Interval.Upper, 1 / distribution.Interval.Lower], "interval_90");
        reference.Equal(1 - distribution.Above(1.0 / 600), "above_600");
        Assert.Equal(reference.Published("median"), Math.Round(1 / distribution.RateNotExceededWith(0.5)));
        Assert.Equal(reference.Published("reciprocal_mean"), Math.Floor(1 / distribution.Mean));
        Assert.Equal(reference.Published("lower_80"), Math.Round(1 / distribution.RateNotExceededWith(0.8)));
    }

    [Fact] // Times too close together, or too far apart, for a gamma distribution in range.
    public void Quantiles_without_a_law_are_a_typed_reason()
    {
        Assert.Equal(NotEstimableKind.OnBoundary, GammaPrior.FromMtbf(600, 599.9999).Reason?.Kind);
        Assert.Equal(NotEstimableKind.OnBoundary, GammaPrior.FromMtbf(1e300, 1e-300).Reason?.Kind);
    }

    [Fact]
    public void Impossible_priors_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaPrior.FromMtbf(250, 600));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaPrior.FromMtbf(600, 250, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GammaPrior(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GammaPrior(1, double.PositiveInfinity));
    }
}
