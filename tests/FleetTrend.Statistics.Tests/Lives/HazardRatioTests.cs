using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class HazardRatioTests
{
    // Freireich and others 1963: coxph of R's survival package, both handlings of ties.
    [Theory]
    [InlineData(TieHandling.Breslow, "breslow")]
    [InlineData(TieHandling.Efron, "efron")]
    public void Two_arms_equal_coxph(TieHandling ties, string name)
    {
        var source = ReferenceCase.Load("freireich-two-arms");
        var ratio = Estimate(source, ties);
        source.Equal(ratio.LogRatio, name, "log_ratio");
        source.Equal(ratio.StandardError, name, "se");
        source.Equal(ratio.ScoreChiSquare, name, "score");
        Assert.Equal(Math.Exp(ratio.LogRatio), ratio.Ratio.Value, 12);
        Assert.True(ratio.Ratio.Interval.Upper < 1 && ratio.PValue < 0.001);
    }

    // Klein and Moeschberger 1997, data channing: score test of coxph with late entry.
    [Fact]
    public void Late_entry_gives_the_score_of_coxph()
    {
        var source = ReferenceCase.Load("channing-late-entry");
        source.Equal(Estimate(source, TieHandling.Breslow).ScoreChiSquare, "cox_score");
    }

    // By hand: the second group fails at 1 (2 and 2 at risk), the first at 2 (2 and 1): 1 - r/(1 + r) - r/(2 + r) = 0, so r^2 = 2.
    [Fact]
    public void Two_failures_by_hand()
    {
        var ratio = HazardRatio.Estimate([Life.FailedAt(2), Life.GoodAt(3)], [Life.FailedAt(1), Life.GoodAt(3)]).Value;
        Assert.Equal(Math.Sqrt(2), ratio.Ratio.Value, 1e-12);
    }

    [Fact]
    public void A_count_is_as_many_lives()
    {
        Life[] many = [Life.FailedAt(3), Life.FailedAt(3), Life.GoodAt(5), Life.GoodAt(5)];
        Life[] counted = [Life.FailedAt(3, 0, 2), Life.GoodAt(5, 0, 2)];
        Life[] other = [Life.FailedAt(2), Life.FailedAt(3), Life.FailedAt(4)];
        Assert.Equal(HazardRatio.Estimate(many, other).Value.LogRatio, HazardRatio.Estimate(counted, other).Value.LogRatio, 12);
    }

    [Fact]
    public void Groups_that_tell_nothing_give_reasons()
    {
        Assert.Equal(NotEstimableKind.NoEvents, HazardRatio.Estimate([Life.GoodAt(3)], [Life.GoodAt(4)]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, HazardRatio.Estimate([Life.FailedAt(3)], [Life.GoodAt(9, entry: 5)]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, HazardRatio.Estimate([Life.FailedAt(3), Life.GoodAt(4)], [Life.GoodAt(4)]).Reason!.Kind);
        Assert.Throws<ArgumentException>(() => HazardRatio.Estimate([Life.FailedBetween(1, 2)], [Life.FailedAt(1)]));
    }

    private static HazardRatio Estimate(ReferenceCase source, TieHandling ties)
    {
        var group = source.Counts("group");
        return HazardRatio.Estimate(source.Lives(i => group[i] == 1), source.Lives(i => group[i] == 2), ties).Value;
    }
}
