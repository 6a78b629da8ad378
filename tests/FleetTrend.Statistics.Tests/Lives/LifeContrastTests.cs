using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class LifeContrastTests
{
    [Theory] // R: survreg of the package survival for fits and standard errors, the one-step jackknife over eight units an arm from derivatives.
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Units_of_two_arms_equal_R(LifeDistribution distribution, string name)
    {
        var expected = ReferenceCase.Load("two-arms-contrast");
        var contrast = LifeContrast.Estimate(distribution, Arm(1), Arm(2)).Value;
        expected.Equal(contrast.MedianRatio.Value, name, "ratio");
        expected.Equal(contrast.MedianRatio.Interval.Lower, name, "lower");
        expected.Equal(contrast.MedianRatio.Interval.Upper, name, "upper");
        expected.Equal(contrast.DesignEffect, name, "design_effect");
        expected.Equal(contrast.PValue, name, "p");
    }

    [Fact] // Definition: a set against itself has ratio 1.
    public void A_set_against_itself_shows_nothing()
    {
        var contrast = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(1)).Value;
        Assert.Equal(1, contrast.MedianRatio.Value, 9);
        Assert.Equal(1, contrast.PValue, 6);
    }

    [Fact] // Definition: ages of one set doubled double the ratio and its limits, and swapping the sets inverts them.
    public void Ages_rescale_and_sides_swap()
    {
        Life[][] doubled = [.. Arm(1).Select(u => u.Select(l => new Life(2 * l.Lower, 2 * l.Upper, 2 * l.Entry, l.Count)).ToArray())];
        var plain = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(2)).Value.MedianRatio.Interval;
        var there = LifeContrast.Estimate(LifeDistribution.Weibull, doubled, Arm(2)).Value.MedianRatio.Interval;
        var back = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(2), doubled).Value.MedianRatio.Interval;
        Assert.Equal(2 * plain.Lower, there.Lower, 5);
        Assert.Equal(2 * plain.Upper, there.Upper, 5);
        Assert.Equal(1 / there.Upper, back.Lower, 6);
    }

    [Fact] // Definition: copies of every unit add no unit; with its lives counted three times a unit says no more about other units than once.
    public void More_lives_on_the_same_units_do_not_narrow_the_interval()
    {
        Life[][] thrice(Life[][] units) => [.. units.Select(u => u.Select(l => new Life(l.Lower, l.Upper, l.Entry, 3 * l.Count)).ToArray())];
        var once = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(2)).Value;
        var three = LifeContrast.Estimate(LifeDistribution.Weibull, thrice(Arm(1)), thrice(Arm(2))).Value;
        Assert.Equal(once.PValue, three.PValue, 9);
        Assert.Equal(once.MedianRatio.Interval.Lower, three.MedianRatio.Interval.Lower, 6);
        Assert.Equal(3 * once.DesignEffect, three.DesignEffect, 6);
    }

    [Fact] // The test and the interval are one: the level at which the interval just touches 1 is one less the p-value.
    public void The_interval_leaves_out_one_exactly_where_the_test_calls()
    {
        var p = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(2)).Value.PValue;
        var wider = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(2), 1 - (p * 0.9999)).Value.MedianRatio.Interval;
        var narrower = LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), Arm(2), 1 - (p * 1.0001)).Value.MedianRatio.Interval;
        Assert.True(wider.Contains(1));
        Assert.False(narrower.Contains(1));
    }

    [Fact]
    public void Too_little_gives_the_reason()
    {
        Assert.Equal(NotEstimableKind.NoEvents, LifeContrast.Estimate(LifeDistribution.Weibull, Arm(1), [[Life.GoodAt(100)]]).Reason!.Kind);
        Life[] all = [.. Arm(1).SelectMany(u => u)];
        Assert.Equal(NotEstimableKind.NoInformation, LifeContrast.Estimate(LifeDistribution.Weibull, [all], [all]).Reason!.Kind);
        // Every failure of the first set is on one unit: without it nothing is left to fit.
        Life[][] carried = [[.. all.Where(l => l.Failed)], [.. all.Where(l => !l.Failed)]];
        Assert.Equal(NotEstimableKind.TooFewEvents, LifeContrast.Estimate(LifeDistribution.Weibull, carried, Arm(2)).Reason!.Kind);
        Assert.Throws<ArgumentException>(() => LifeContrast.Estimate(LifeDistribution.Exponential, Arm(1), Arm(2)));
    }

    /// <summary>The lives of an arm, dealt to eight units in turn.</summary>
    private static Life[][] Arm(int which)
    {
        var data = ReferenceCase.Load("breast-cosmesis-two-arms");
        var arm = data.Counts("arm");
        var lives = data.Lives(i => arm[i] == which);
        return [.. lives.Select((l, i) => (Life: l, Unit: (i + 1) % 8)).GroupBy(l => l.Unit).OrderBy(g => g.Key).Select(g => g.Select(l => l.Life).ToArray())];
    }
}
