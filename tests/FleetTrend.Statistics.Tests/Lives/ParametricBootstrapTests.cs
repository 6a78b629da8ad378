using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class ParametricBootstrapTests
{
    private static readonly List<Life> Lives = SimulatedLives.Make(11, 150, 2.5, 1000);

    // With many lives both intervals are the same to first order (Efron 1987); 400 draws leave about 10 % of an end's distance.
    [Fact]
    public void With_many_lives_the_interval_is_near_the_profile_interval()
    {
        var fit = LifeFit.Fit(LifeDistribution.Weibull, Lives).Value;
        var bootstrap = ParametricBootstrap.Interval(fit, Lives, model => model.Shape, seed: 7, replicates: 400).Value;
        var width = fit.Shape.Interval.Upper - fit.Shape.Interval.Lower;
        Assert.Equal(fit.Shape.Value, bootstrap.Value);
        Assert.Equal(fit.Shape.Interval.Lower, bootstrap.Interval.Lower, 0.15 * width);
        Assert.Equal(fit.Shape.Interval.Upper, bootstrap.Interval.Upper, 0.15 * width);
        Assert.Equal(bootstrap, ParametricBootstrap.Interval(fit, Lives, model => model.Shape, seed: 7, replicates: 400).Value);
    }

    // Known truth: lives drawn from a Weibull of shape 2.5 are no exponential lives.
    [Fact]
    public void The_true_family_fits_and_a_wrong_one_does_not()
    {
        var right = ParametricBootstrap.GoodnessOfFit(LifeFit.Fit(LifeDistribution.Weibull, Lives).Value, Lives, seed: 1, replicates: 100).Value;
        var wrong = ParametricBootstrap.GoodnessOfFit(LifeFit.Fit(LifeDistribution.Exponential, Lives).Value, Lives, seed: 1, replicates: 100).Value;
        Assert.InRange(right.PValue, 0.05, 1);
        Assert.InRange(wrong.PValue, 0, 0.02);
        Assert.True(wrong.Distance > right.Distance);
    }

    // Nelson 1982 p. 415: distance of the Weibull from the cumulative shares, by hand from the fit in months.
    [Fact]
    public void The_distance_is_the_largest_difference_at_the_looks()
    {
        var source = ReferenceCase.Load("crack-inspections");
        var fit = LifeFit.Fit(LifeDistribution.Weibull, source.Lives()).Value;
        double[] looks = [.. source.Column("lower").Skip(1)];
        var byHand = looks.Zip(source.ExpectedAll("cdf")).Max(p =>
            Math.Abs(p.Second - (1 - Math.Exp(-Math.Pow(p.First / source.Expected("scale"), source.Expected("shape"))))));
        Assert.Equal(byHand, ParametricBootstrap.Distance(fit.Model, TurnbullEstimate.Estimate(source.Lives()).Value), 6);
    }

    [Fact]
    public void Too_few_failures_give_a_reason()
    {
        Life[] few = [Life.FailedAt(300), Life.GoodAt(500)];
        var fit = LifeFit.Fit(LifeDistribution.Weibull, few).Value;
        Assert.Equal(
            NotEstimableKind.TooFewEvents, ParametricBootstrap.Interval(fit, few, model => model.Shape, seed: 1, replicates: 100).Reason!.Kind);
    }
}
