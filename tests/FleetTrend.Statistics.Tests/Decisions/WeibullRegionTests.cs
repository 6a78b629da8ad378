using FleetTrend.Statistics.Decisions;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Tests.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Tests.Decisions;

/// <summary>Renewal ages and look intervals of a fitted life, with limits on units that differ.</summary>
public sealed class WeibullRegionTests
{
    [Theory] // R: survreg of the package survival, the one-step jackknife from derivatives, and the edges of both ellipses searched finely.
    [InlineData(0.95, "")]
    [InlineData(0.8, "_80")]
    public void Decisions_and_their_limits_equal_R(double confidence, string suffix)
    {
        var expected = ReferenceCase.Load("renewal-on-units");
        var (ratio, until, risk) = (expected.Parameter("cost_ratio"), expected.Parameter("until"), expected.Parameter("risk"));
        IReadOnlyList<Life>[] units = [.. SharedUnitsContrastTests.Units().Select(u => u.Second)];
        var region = WeibullRegion.Estimate(units, confidence).Value;
        var age = AgeReplacement.Optimum(region.Life, 1, ratio).Age;
        Equal(new IntervalEstimate(region.Life.Shape, region.Shape), "shape");
        Equal(region.Limits(l => AgeReplacement.Optimum(l, 1, ratio).Age), "age");
        Equal(region.Limits(l => 1 - (AgeReplacement.CostPerHourAt(l, 1, ratio, age) * l.Mean / ratio)), "saved");
        Equal(region.Limits(l => LookInterval.LongestEqual(l, until, risk)), "look");
        var fit = LifeFit.Fit(LifeDistribution.Weibull, [.. units.SelectMany(u => u)], confidence).Value;
        Assert.Equal(region.Shape, WeibullRegion.Estimate(units, confidence, fit).Value.Shape); // one that is known is not made again

        void Equal(IntervalEstimate found, string name) =>
            expected.Equal([found.Value, found.Interval.Lower, found.Interval.Upper], name + suffix);
    }

    // By hand: the logarithm of a quantity that is linear in (ln scale, ln shape) has limits at reach times its standard error; that of the scale alone is the
    // square root of the larger variance. With one unit nothing is known of how units differ: all failures are on it, so that a variation of one half adds
    // (1/2)^2 / shape^2 to the variance of ln scale, and t has four degrees.
    [Fact]
    public void One_unit_is_taken_to_differ_from_others()
    {
        Life[] lives = [.. Enumerable.Range(1, 20).Select(i => Life.FailedAt(100 + (20 * i)))];
        var fit = LifeFit.Fit(LifeDistribution.Weibull, lives).Value;
        var region = WeibullRegion.Estimate([lives]).Value;
        var error = Math.Sqrt(fit.LogCovariance.LogScale + (0.25 / (fit.Model.Shape * fit.Model.Shape)));
        var scale = region.Limits(l => l.Scale);
        var reach = StudentT.InvCDF(0, 1, 4, 0.975);
        Assert.Equal(fit.Model.Scale, scale.Value, 6);
        Assert.Equal(fit.Model.Scale * Math.Exp(reach * error), scale.Interval.Upper, 4);
        Assert.Equal(fit.Model.Scale * Math.Exp(-reach * error), scale.Interval.Lower, 4);
        Assert.Equal(fit.Model.Shape * Math.Exp(reach * Math.Sqrt(fit.LogCovariance.LogShape)), region.Shape.Upper, 6);
    }

    [Fact]
    public void Too_little_gives_the_reason()
    {
        Assert.Equal(NotEstimableKind.NoEvents, WeibullRegion.Estimate([[Life.GoodAt(100)]]).Reason!.Kind);
        IReadOnlyList<Life> failed = [Life.FailedAt(100), Life.FailedAt(150), Life.FailedAt(220)];
        Assert.Equal(NotEstimableKind.TooFewEvents, WeibullRegion.Estimate([failed, [Life.GoodAt(90)]]).Reason!.Kind);
    }
}
