using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class GammaPoissonFitTests
{
    [Fact] // Ten pumps, Gaver and O'Muircheartaigh 1987; marginal maximum likelihood and posteriors in R.
    public void Pump_failures()
    {
        var reference = ReferenceCase.Load("pump-failures");
        var units = Units(reference, "exposure");
        var fit = GammaPoissonFit.Fit(units).Value;
        var posteriors = Equal(reference, fit, units);
        reference.Equal(fit.LikelihoodRatio, "likelihood_ratio");
        reference.Equal(fit.EqualRatesPValue, "equal_rates_p");
        reference.Equal(units.Select(u => u.Events / u.Exposure), "raw_rates");
        reference.Equal(posteriors.Select(p => p.Above(1)), "above_1");
        reference.Equal(units.Select(fit.UpperPValue), "upper_p");
    }

    [Fact] // The same to four printed digits: shape .8223, rate 1.2590 and the shrunk rates (marginal maximum likelihood in R).
    public void Pump_failures_in_round_figures()
    {
        var units = Units(ReferenceCase.Load("pump-failures"), "exposure");
        var fit = GammaPoissonFit.Fit(units).Value;
        Assert.Equal(0.8223, fit.Shape, 4);
        Assert.Equal(1.2590, fit.Rate, 4);
        double[] shrunk = [0.0609, 0.1073, 0.0908, 0.1167, 0.5881, 0.6062, 0.7899, 0.7899, 1.4374, 1.9442];
        Assert.All(shrunk.Zip(units), p => Assert.Equal(p.First, fit.Posterior(p.Second).Value.Mean, 1e-4));
    }

    [Fact] // Counts from none to two million: marginal maximum likelihood in R.
    public void Counts_to_millions()
    {
        var reference = ReferenceCase.Load("counts-to-millions");
        var fit = GammaPoissonFit.Fit(Units(reference, "exposure")).Value;
        reference.Equal(fit.Shape, "shape");
        reference.Equal(fit.Rate, "rate");
        reference.Equal(fit.LogLikelihood, "log_likelihood");
        reference.Equal(fit.Errors.Value.LogShape, "se_log_shape");
        reference.Equal(fit.Errors.Value.LogRate, "se_log_rate");
    }

    [Theory] // By hand: the sums over events of every unit, term by term.
    [InlineData(0.01)]
    [InlineData(3)]
    [InlineData(1e4)]
    [InlineData(1e12)]
    public void Sums_over_many_events_equal_the_terms_added_up(double shape)
    {
        int[] events = [0, 1, 40, 63, 65, 66, 90, 5000, 5010, 200_000];
        var above = new UnitsAbove(events);
        var terms = events.SelectMany(n => Enumerable.Range(0, n)).Select(j => (double)j).ToArray();
        Near(terms.Sum(j => Math.Abs(j / shape) < 1e-4 ? (j / shape) - (j / shape * (j / shape) / 2) + (Math.Pow(j / shape, 3) / 3)
            : Math.Log(1 + (j / shape))), above.Logarithms(shape));
        Near(terms.Sum(j => j / (shape * (shape + j))), above.Slopes(shape));
        Near(terms.Sum(j => Math.Pow(shape / (shape + j), 2)), above.Squares(shape));
        static void Near(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-11);
    }

    [Fact] // By hand: two alike units have no extra variation, however many events; the cost must not grow with them.
    public void Two_thousand_million_events()
    {
        var fit = GammaPoissonFit.Fit([new(2_000_000_000, 1e6), new(2_000_000_000, 1e6)]).Value;
        Assert.True(fit.NoExtraVariation);
        Assert.Equal(2000, fit.Mean, 1e-9);
    }

    [Fact] // Twelve welds of a simulated fleet, seed 20240602: exact limits of each rate and the distribution of rates, in R.
    public void Simulated_welds()
    {
        var reference = ReferenceCase.Load("sim2-cracks-locations");
        var units = Units(reference, "hours");
        var rates = units.ConvertAll(u => RateEstimate.Estimate(u.Events, u.Exposure).Value);
        reference.Equal(rates.Select(r => r.Rate), "rate_by_location");
        reference.Equal(rates.Select(r => r.Interval.Lower), "rate_lower");
        reference.Equal(rates.Select(r => r.Interval.Upper), "rate_upper");
        Equal(reference, GammaPoissonFit.Fit(units).Value, units);
    }

    [Fact] // Simulated fleet, seed 20240602: R on observed against expected counts; aircraft 17 was given four times the rate.
    public void Simulated_aircraft()
    {
        var reference = ReferenceCase.Load("sim2-cracks-aircraft");
        var units = Units(reference, "expected");
        var fit = GammaPoissonFit.Fit(units).Value;
        var posteriors = Equal(reference, fit, units);
        reference.Equal(fit.LikelihoodRatio, "likelihood_ratio");
        reference.Equal(posteriors.Select(p => p.Above(2)), "above_2");
        reference.Equal(units.Select(fit.UpperPValue), "p_law");
        reference.Equal(FalseDiscovery.QValues([.. units.Select(fit.UpperPValue)]), "q_law");
        reference.Equal(FalseDiscovery.QValues([.. units.Select(fit.UpperPValue)]).Count(q => q <= 0.05), "flagged_law_count");
        reference.Equal(1 + posteriors.FindIndex(p => p.Mean == posteriors.Max(q => q.Mean)), "top");
    }

    [Fact] // Aircraft 17 against the distribution of the other fifty-nine at their pooled rate, in R.
    public void Simulated_aircraft_17_left_out()
    {
        var reference = ReferenceCase.Load("sim2-cracks-aircraft");
        var hours = Units(reference, "hours");
        var seventeenth = hours[16];
        hours.RemoveAt(16);
        var rate = hours.Sum(u => (double)u.Events) / hours.Sum(u => u.Exposure);
        var expected = rate * seventeenth.Exposure;
        reference.Equal(expected, "others", "expected");
        var fit = GammaPoissonFit.Fit(hours.ConvertAll(u => new CountExposure(u.Events, rate * u.Exposure))).Value;
        reference.Equal(fit.Shape, "others", "shape");
        reference.Equal(fit.Rate, "others", "rate");
        reference.Equal(fit.UpperPValue(new CountExposure(seventeenth.Events, expected)), "others", "p_law");
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
        Assert.Equal(NotEstimableKind.OnBoundary, fit.Errors.Reason?.Kind);
        Assert.Equal(0, fit.StandardDeviation);
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

    /// <summary>The distribution, its errors, and each unit's posterior.</summary>
    private static List<GammaPosterior> Equal(ReferenceCase reference, GammaPoissonFit fit, List<CountExposure> units)
    {
        reference.Equal(fit.Shape, "shape");
        reference.Equal(fit.Rate, "rate");
        reference.Equal(fit.Mean, "prior_mean");
        reference.Equal(fit.StandardDeviation, "prior_sd");
        reference.Equal(fit.LogLikelihood, "log_likelihood");
        reference.Equal(fit.PoissonLogLikelihood, "log_likelihood_poisson");
        var errors = fit.Errors.Value;
        reference.Equal(errors.LogShape, "se_log_shape");
        reference.Equal(errors.LogRate, "se_log_rate");
        reference.Equal(errors.Covariance, "covariance");
        var posteriors = units.ConvertAll(u => fit.Posterior(u).Value);
        reference.Equal(posteriors.Select(p => p.Shape), "posterior_shape");
        reference.Equal(posteriors.Select(p => p.Rate), "posterior_rate");
        reference.Equal(posteriors.Select(p => p.Mean), "mean");
        reference.Equal(posteriors.Select(p => p.Interval.Lower), "lower");
        reference.Equal(posteriors.Select(p => p.Interval.Upper), "upper");
        return posteriors;
    }

    internal static List<CountExposure> Units(ReferenceCase reference, string exposure) =>
        [.. reference.Counts("events").Zip(reference.Column(exposure), (e, t) => new CountExposure(e, t))];
}
