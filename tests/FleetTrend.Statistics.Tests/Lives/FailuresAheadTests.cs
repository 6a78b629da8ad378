using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Chances in the hours ahead of parts that are good, with delta-method limits.</summary>
public sealed class FailuresAheadTests
{
    // Nelson 1982 p. 415: fit and covariance of R's survival package, derivatives by central differences there.
    [Theory]
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Chances_and_their_sum_equal_the_reference(LifeDistribution distribution, string name)
    {
        var source = ReferenceCase.Load("chances-crack-inspections");
        var fit = LifeFit.Fit(distribution, source.Lives()).Value;
        PartAhead[] parts = [.. source.Parameters("age").Zip(source.Parameters("ahead"), (age, ahead) => new PartAhead(fit, age, ahead))];
        var chances = Array.ConvertAll(parts, FailuresAhead.EstimateChance);
        source.Equal(chances.Select(c => c.Value), name, "chance");
        source.Equal(chances.Select(c => c.Interval.Lower), name, "lower");
        source.Equal(chances.Select(c => c.Interval.Upper), name, "upper");
        var sum = FailuresAhead.EstimateSum(parts);
        source.Equal(sum.Value, name, "sum");
        source.Equal([sum.Interval.Lower, sum.Interval.Upper], name, "sum_interval");
    }

    // By hand: an exponential of 5 failures in 1,000 h has scale 200 h, and the variance of its logarithm is 1/5. The chance over 100 h is 1 - exp(-0.5),
    // whatever the age; ln h has the variance of ln scale, so that the limits are 1 - exp(-0.5 exp(-+ 1.96/sqrt 5)).
    [Theory]
    [InlineData(0)]
    [InlineData(730)]
    public void Without_wear_the_chance_is_the_same_at_every_age(double age)
    {
        var fit = LifeFit.Fit(LifeDistribution.Exponential, [Life.FailedAt(200, count: 5)]).Value;
        var chance = FailuresAhead.EstimateChance(new PartAhead(fit, age, 100));
        Assert.Equal(1 - Math.Exp(-0.5), chance.Value, 9);
        Assert.Equal(1 - Math.Exp(-0.5 * Math.Exp(-1.959964 / Math.Sqrt(5))), chance.Interval.Lower, 6);
        Assert.Equal(1 - Math.Exp(-0.5 * Math.Exp(1.959964 / Math.Sqrt(5))), chance.Interval.Upper, 6);
    }

    // By hand, the same fit: the sum over n such parts has n times the slope, so that its relative error is that of one; two fits are independent, so that
    // with one part of each the relative error is over sqrt 2. The slope of p in ln scale is -h exp(-h) = -0.5 exp(-0.5).
    [Fact]
    public void Parts_of_one_fit_share_its_error_and_fits_do_not()
    {
        var (one, other) = (Exponential(), Exponential());
        var relative = 1.959964 * 0.5 * Math.Exp(-0.5) / Math.Sqrt(5) / (1 - Math.Exp(-0.5));
        var shared = FailuresAhead.EstimateSum([new PartAhead(one, 10, 100), new PartAhead(one, 300, 100), new PartAhead(one, 0, 100)]);
        Assert.Equal(3 * (1 - Math.Exp(-0.5)), shared.Value, 9);
        Assert.Equal(relative, Math.Log(shared.Interval.Upper / shared.Value), 6);
        var apart = FailuresAhead.EstimateSum([new PartAhead(one, 10, 100), new PartAhead(other, 10, 100)]);
        Assert.Equal(relative / Math.Sqrt(2), Math.Log(apart.Interval.Upper / apart.Value), 6);

        static LifeFit Exponential() => LifeFit.Fit(LifeDistribution.Exponential, [Life.FailedAt(200, count: 5)]).Value;
    }

    [Fact]
    public void No_hours_ahead_and_no_parts_are_no_chance()
    {
        var fit = LifeFit.Fit(LifeDistribution.Exponential, [Life.FailedAt(200, count: 5)]).Value;
        Assert.Equal((0.0, 0.0, 0.0), Parts(FailuresAhead.EstimateChance(new PartAhead(fit, 10, 0))));
        Assert.Equal((0.0, 0.0, 0.0), Parts(FailuresAhead.EstimateSum([])));
        Assert.Equal((0.0, 0.0, 0.0), Parts(FailuresAhead.EstimateSum([new PartAhead(fit, 10, 0)])));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PartAhead(fit, -1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PartAhead(fit, 1, double.PositiveInfinity));

        static (double, double, double) Parts(IntervalEstimate e) => (e.Value, e.Interval.Lower, e.Interval.Upper);
    }
}
