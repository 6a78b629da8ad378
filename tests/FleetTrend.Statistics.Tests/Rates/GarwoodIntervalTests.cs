using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class GarwoodIntervalTests
{
    [Theory] // Garwood 1936 through the chi-square formula in R; reference/poisson-exact-garwood.
    [InlineData("conf_90", 0.90)]
    [InlineData("conf_95", 0.95)]
    [InlineData("conf_99", 0.99)]
    public void Limits_equal_the_chi_square_formula(string column, double confidence)
    {
        var reference = ReferenceCase.Load("poisson-exact-garwood");
        var limits = reference.Counts("count").Select(c => GarwoodInterval.Estimate(c, confidence)).ToList();
        reference.Equal(limits.Select(l => l.Lower), column, "lower");
        reference.Equal(limits.Select(l => l.Upper), column, "upper");
    }

    [Fact] // The same case: one-sided upper limits at 95 percent.
    public void One_sided_limits_equal_the_chi_square_formula()
    {
        var reference = ReferenceCase.Load("poisson-exact-garwood");
        reference.Equal(reference.Counts("count").Select(c => GarwoodInterval.UpperLimit(c)), "one_sided_upper_95");
    }

    [Fact] // Printed digits: 3.689 and 2.996 in the help of R's epitools package; 4.80 to 18.39 on a public table page.
    public void Published_digits_are_met()
    {
        Assert.Equal(3.689, GarwoodInterval.Estimate(0).Upper, 3);
        Assert.Equal(2.996, GarwoodInterval.UpperLimit(0), 3);
        Assert.Equal(4.80, GarwoodInterval.Estimate(10).Lower, 2);
        Assert.Equal(18.39, GarwoodInterval.Estimate(10).Upper, 2);
    }

    [Fact] // The chi-square formula's limits at 95 percent to four digits, as common tables print them.
    public void Limits_of_small_counts()
    {
        double[] lower = [0, 0.0253, 0.2422, 0.6187, 1.0899, 1.6235];
        double[] upper = [3.6889, 5.5716, 7.2247, 8.7673, 10.2416, 11.6683];
        for (var events = 0; events <= 5; events++)
        {
            Assert.Equal(lower[events], GarwoodInterval.Estimate(events).Lower, 4);
            Assert.Equal(upper[events], GarwoodInterval.Estimate(events).Upper, 4);
        }
    }

    [Theory] // The definition itself (Garwood 1936): each limit puts half of what confidence leaves into one Poisson tail.
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(400)]
    [InlineData(1_000_000)]
    public void Each_limit_has_its_tail(int events)
    {
        var interval = GarwoodInterval.Estimate(events);
        Assert.Equal(0.025, MathNet.Numerics.SpecialFunctions.GammaLowerRegularized(events, interval.Lower), 9);
        Assert.Equal(0.025, MathNet.Numerics.SpecialFunctions.GammaUpperRegularized(events + 1.0, interval.Upper), 9);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(double.NaN)]
    public void A_confidence_outside_zero_to_one_is_refused(double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GarwoodInterval.Estimate(3, confidence));

    [Fact]
    public void A_negative_count_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GarwoodInterval.Estimate(-1));
}
