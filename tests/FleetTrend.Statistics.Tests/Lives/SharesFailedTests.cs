using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Shares of lives that fail by an age, on units that differ.</summary>
public sealed class SharesFailedTests
{
    [Theory] // R: survreg of the package survival for the fit and its variance, the one-step jackknife over eight units from derivatives.
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Shares_equal_R(LifeDistribution distribution, string name)
    {
        var expected = ReferenceCase.Load("shared-units-contrast");
        IReadOnlyList<Life>[] units = [.. SharedUnitsContrastTests.Units().Select(u => u.First)];
        (double, double)[] spans = [.. expected.Parameters("age").Zip(expected.Parameters("ahead"))];
        var shares = SharesFailed.EstimateAhead(distribution, units, spans).Value;
        Assert.Equal(shares.Take(3), SharesFailed.Estimate(distribution, units, [10, 20, 40]).Value);
        expected.Equal(shares.Select(s => s.Value), name, "share");
        expected.Equal(shares.Select(s => s.Interval.Lower), name, "lower_share");
        expected.Equal(shares.Select(s => s.Interval.Upper), name, "upper_share");
    }

    // By hand: an exponential has variance 1/failures of ln H whatever the age, here 1/4; one unit has all failures, so that a variation of one half adds 1/4;
    // t with four degrees. H(100) = 100 over 200 h.
    [Fact]
    public void One_unit_is_taken_to_differ_from_others()
    {
        var share = SharesFailed.Estimate(LifeDistribution.Exponential, [[Life.FailedAt(200, count: 4)], []], [100]).Value[0];
        var reach = StudentT.InvCDF(0, 1, 4, 0.975) * Math.Sqrt(0.25 + 0.25);
        Assert.Equal(1 - Math.Exp(-0.5), share.Value, 6);
        Assert.Equal(1 - Math.Exp(-0.5 * Math.Exp(-reach)), share.Interval.Lower, 6);
        Assert.Equal(1 - Math.Exp(-0.5 * Math.Exp(reach)), share.Interval.Upper, 6);
    }

    [Fact]
    public void Too_little_gives_the_reason()
    {
        Assert.Equal(NotEstimableKind.NoEvents, SharesFailed.Estimate(LifeDistribution.Weibull, [[Life.GoodAt(100)]], [100]).Reason!.Kind);
        IReadOnlyList<Life> first = [.. SharedUnitsContrastTests.Units().SelectMany(u => u.First)];
        Assert.Equal(
            NotEstimableKind.TooFewEvents, SharesFailed.Estimate(LifeDistribution.Weibull, [first, [Life.GoodAt(10)]], [100]).Reason!.Kind);
    }
}
