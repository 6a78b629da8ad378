using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class GammaPoissonFitTests
{
    [Fact] // Ten pumps, Gaver and O'Muircheartaigh 1987; marginal maximum likelihood and posteriors in R.
    public void Pump_failures()
    {
        var reference = ReferenceCase.Load("pump-failures");
        var units = Units(reference, "exposure");
        var fit = GammaPoissonFit.Fit(units).Value;
        reference.Equal(fit.Shape, "shape");
        reference.Equal(fit.Rate, "rate");
        reference.Equal(fit.LogLikelihood, "log_likelihood");
        reference.Equal(fit.PoissonLogLikelihood, "log_likelihood_poisson");
        reference.Equal(fit.LikelihoodRatio, "likelihood_ratio");
        reference.Equal(fit.EqualRatesPValue, "equal_rates_p");
        var posteriors = units.ConvertAll(u => fit.Posterior(u).Value);
        reference.Equal(posteriors.Select(p => p.Mean), "mean");
        reference.Equal(posteriors.Select(p => p.Interval.Lower), "lower");
        reference.Equal(posteriors.Select(p => p.Interval.Upper), "upper");
        reference.Equal(posteriors.Select(p => p.Above(1)), "above_1");
        reference.Equal(units.Select(fit.UpperPValue), "upper_p");
    }

    [Fact] // Simulated fleet, seed 20240602: R on observed against expected counts; aircraft 17 was given four times the rate.
    public void Simulated_aircraft()
    {
        var reference = ReferenceCase.Load("sim2-cracks-aircraft");
        var units = Units(reference, "expected");
        var fit = GammaPoissonFit.Fit(units).Value;
        reference.Equal(fit.Shape, "shape");
        reference.Equal(fit.Rate, "rate");
        var posteriors = units.ConvertAll(u => fit.Posterior(u).Value);
        reference.Equal(posteriors.Select(p => p.Mean), "mean");
        reference.Equal(posteriors.Select(p => p.Interval.Lower), "lower");
        reference.Equal(posteriors.Select(p => p.Interval.Upper), "upper");
        reference.Equal(posteriors.Select(p => p.Above(2)), "above_2");
        reference.Equal(units.Select(fit.UpperPValue), "p_law");
        reference.Equal(FalseDiscovery.QValues([.. units.Select(fit.UpperPValue)]), "q_law");
        Assert.Equal(17, 1 + posteriors.FindIndex(p => p.Mean == posteriors.Max(q => q.Mean)));
    }

    [Fact] // Self and Liang 1987: counts that spread less than Poisson counts have their maximum on the edge, one rate for all.
    public void Even_counts_lie_on_the_boundary()
    {
        var fit = GammaPoissonFit.Fit([new(4, 100), new(5, 100), new(4, 100), new(5, 100)]).Value;
        Assert.True(fit.NoExtraVariation);
        Assert.Equal(0, fit.CoefficientOfVariation);
        Assert.Equal(0.045, fit.Mean, 12);
        Assert.Equal(1, fit.EqualRatesPValue);
        Assert.Equal(NotEstimableKind.OnBoundary, fit.Posterior(new(4, 100)).Reason?.Kind);
        // P(Poisson(4.5) >= 9), 0.0403 from printed Poisson tables (from memory).
        Assert.Equal(0.0403, fit.UpperPValue(new(9, 100)), 4);
    }

    [Fact]
    public void Data_that_cannot_tell_give_typed_reasons()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, GammaPoissonFit.Fit([new(0, 0)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, GammaPoissonFit.Fit([new(0, 10), new(0, 20)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoInformation, GammaPoissonFit.Fit([new(3, 10)]).Reason?.Kind);
    }

    internal static List<CountExposure> Units(ReferenceCase reference, string exposure) =>
        [.. reference.Counts("events").Zip(reference.Column(exposure), (e, t) => new CountExposure(e, t))];
}
