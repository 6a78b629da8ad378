using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class HierarchicalRatesTests
{
    // George, Makov and Smith 1993: shape exponential of rate 1, rate parameter Gamma(0.1, 1), written over (mean, shape).
    private static readonly RatePrior Published = new(
        "shape Exp(1), rate Gamma(0.1, 1)",
        (mean, shape) => -shape - 0.9 * Math.Log(shape / mean) - shape / mean + Math.Log(shape / (mean * mean)));

    [Fact] // Pumps with the published priors; posterior means on a fine grid in R (1e-4), near the published simulated values.
    public void Pump_failures_with_the_published_priors()
    {
        var reference = ReferenceCase.Load("pump-failures");
        var rates = HierarchicalRates.Estimate(GammaPoissonFitTests.Units(reference, "exposure"), prior: Published).Value;
        void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-4 * Math.Abs(expected) + 1e-5);
        Near(reference.Expected("hierarchy", "shape_mean"), rates.MeanShape);
        Near(reference.Expected("hierarchy", "rate_mean"), rates.MeanRateParameter);
        Near(reference.Expected("hierarchy", "shape_sd"), rates.ShapeDeviation);
        Near(reference.Expected("hierarchy", "rate_sd"), rates.RateParameterDeviation);
        Assert.Equal(reference.Published("shape_mean"), rates.MeanShape, 0.02);
        Assert.Equal(reference.Published("rate_mean"), rates.MeanRateParameter, 0.03);
        foreach (var (expected, unit) in reference.ExpectedAll("hierarchy", "theta_mean").Zip(rates.Units))
            Near(expected, unit.Rate);
        foreach (var (printed, unit) in reference.PublishedAll("theta_mean").Zip(rates.Units))
            Assert.Equal(printed, unit.Rate, 0.04 * printed);
    }

    [Fact] // Definition: the tail of the mixture at its own limits is what credibility leaves on either side.
    public void Limits_are_quantiles_of_the_posterior()
    {
        var reference = ReferenceCase.Load("pump-failures");
        var rates = HierarchicalRates.Estimate(GammaPoissonFitTests.Units(reference, "exposure")).Value;
        Assert.All(rates.Units, u =>
        {
            Assert.Equal(0.975, u.ExceedanceProbability(u.RatioInterval.Lower), 9);
            Assert.Equal(0.025, u.ExceedanceProbability(u.RatioInterval.Upper), 9);
        });
    }

    // The full quadrature is the reference; 30 units with 0 to 9 events where 3 were expected, which leave the spread as open as a small fleet does.
    [Fact]
    public void Leaving_light_points_out_moves_the_limits_by_a_few_hundredths()
    {
        CountExposure[] units = [.. Enumerable.Range(0, 30).Select(i => new CountExposure(i * 7 % 10 * (i % 3) / 2, 3))];
        var full = HierarchicalRates.Estimate(units).Value;
        var light = HierarchicalRates.Estimate(units, smallestWeight: 1e-3).Value;
        Assert.All(full.Units.Zip(light.Units), u =>
        {
            Assert.InRange(u.Second.Ratio / u.First.Ratio, 0.99, 1.01);
            Assert.InRange(u.Second.RatioInterval.Lower / u.First.RatioInterval.Lower, 0.97, 1.03);
            Assert.InRange(u.Second.RatioInterval.Upper / u.First.RatioInterval.Upper, 0.97, 1.03);
            Assert.Equal(u.First.ExceedanceProbability(1.5), u.Second.ExceedanceProbability(1.5), 0.005);
        });
        Assert.NotEqual(full.Units[0].Ratio, light.Units[0].Ratio);
    }

    [Fact] // The distribution being estimated widens intervals: they hold the plug-in intervals' width (Carlin and Louis, from memory).
    public void Intervals_are_wider_than_with_a_known_law()
    {
        var reference = ReferenceCase.Load("pump-failures");
        var units = GammaPoissonFitTests.Units(reference, "exposure");
        var fit = GammaPoissonFit.Fit(units).Value;
        var rates = HierarchicalRates.Estimate(units).Value;
        var wider = rates.Units.Zip(units).Count(p =>
            Width(p.First.RateInterval) > Width(fit.Posterior(p.Second).Value.Interval));
        Assert.True(wider >= 8, $"{wider} of 10 wider");
        static double Width(Interval interval) => Math.Log(interval.Upper / interval.Lower);
    }

    [Fact] // By hand: under uniform shrinkage the share shape/(1 + shape) is uniform, so that its density in the shape is (1 + shape)^-2.
    public void Uniform_shrinkage_is_uniform()
    {
        foreach (var shape in (double[])[0.01, 0.5, 3, 200])
        {
            var onLogs = RatePrior.UniformShrinkage.OnLogs(2, shape) - RatePrior.UniformShrinkage.OnLogs(5, 1);
            Assert.Equal(shape / Math.Pow(1 + shape, 2) / (1 / 4.0), Math.Exp(onLogs), 1e-12);
        }
    }

    [Fact] // On the boundary ratios stay near one, with an interval that still has width.
    public void Even_counts_give_ratios_near_one_with_width()
    {
        var rates = HierarchicalRates.Estimate([.. Enumerable.Range(0, 20).Select(i => new CountExposure(4 + i % 2, 100))]).Value;
        Assert.All(rates.Units, u => Assert.InRange(u.Ratio, 0.97, 1.03));
        Assert.All(rates.Units, u => Assert.True(u.RatioInterval.Lower < 0.95 && u.RatioInterval.Upper > 1.05));
        Assert.True(rates.Units[0].ExceedanceProbability(1.5) < 0.05);
    }

    [Fact] // A unit without exposure knows only the distribution: its posterior is wider than any other.
    public void A_unit_without_exposure_has_the_law_itself()
    {
        var rates = HierarchicalRates.Estimate([new(9, 100), new(2, 100), new(5, 100), new(0, 0)]).Value;
        Assert.Equal(1, rates.Units[3].Ratio, 9);
        Assert.True(rates.Units[3].RatioInterval.Upper > rates.Units[1].RatioInterval.Upper);
    }

    [Theory] // Shapes from tiny to huge, counts from none to many: an answer, never NaN.
    [InlineData(1, 0, 0, 0)]
    [InlineData(1000, 0, 0, 0)]
    [InlineData(100000, 99000, 101000, 100500)]
    [InlineData(1, 1, 1, 1)]
    public void Extreme_counts(int a, int b, int c, int d)
    {
        var rates = HierarchicalRates.Estimate([new(a, 1000), new(b, 1000), new(c, 1000), new(d, 1000)]).Value;
        Assert.All(rates.Units, u => Assert.True(
            double.IsFinite(u.Ratio) && u.RatioInterval.Lower <= u.Ratio && u.Ratio <= u.RatioInterval.Upper * 1.5));
    }

    [Fact]
    public void No_events_and_no_exposure_are_typed_reasons()
    {
        Assert.Equal(NotEstimableKind.NoEvents, HierarchicalRates.Estimate([new(0, 5)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, HierarchicalRates.Estimate([new(0, 0)]).Reason?.Kind);
    }
}
