using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class ClopperPearsonIntervalTests
{
    [Fact] // R stats::binom.test: 5 of 25, none of 10, none of 20, all of 25.
    public void Limits_equal_the_reference()
    {
        var reference = ReferenceCase.Load("binomial-exact");
        var (events, trials) = (reference.Counts("events"), reference.Counts("trials"));
        var limits = events.Select((e, i) => ClopperPearsonInterval.Estimate(e, trials[i])).ToList();
        reference.Equal(limits.Select(l => l.Lower), "lower");
        reference.Equal(limits.Select(l => l.Upper), "upper");
        reference.Equal(events.Select((e, i) => ClopperPearsonInterval.UpperLimit(e, trials[i])), "one_sided_upper");
    }

    [Fact] // To four digits as common tables print them; none of n by hand: 1 - 0.05^(1/n).
    public void Printed_limits()
    {
        var five = ClopperPearsonInterval.Estimate(5, 25);
        Assert.Equal(0.0683, five.Lower, 4);
        Assert.Equal(0.4070, five.Upper, 4);
        Assert.Equal(0.2589, ClopperPearsonInterval.UpperLimit(0, 10), 4);
        Assert.Equal(0.1391, ClopperPearsonInterval.UpperLimit(0, 20), 4);
        Assert.Equal(1 - Math.Pow(0.05, 0.1), ClopperPearsonInterval.UpperLimit(0, 10), 12);
    }

    [Fact]
    public void Impossible_counts_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearsonInterval.Estimate(3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearsonInterval.Estimate(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearsonInterval.Estimate(-1, 5));
    }
}
