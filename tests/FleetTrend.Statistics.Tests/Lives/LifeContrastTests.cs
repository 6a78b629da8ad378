using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class LifeContrastTests
{
    [Theory] // survreg of the R package survival on the two arms: quantile with its standard error, log-likelihoods.
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Two_arms_equal_survreg(LifeDistribution distribution, string name)
    {
        var data = ReferenceCase.Load("breast-cosmesis-two-arms");
        var expected = ReferenceCase.Load("two-arms-contrast");
        var arm = data.Counts("arm");
        var contrast = LifeContrast.Estimate(distribution, data.Lives(i => arm[i] == 1), data.Lives(i => arm[i] == 2)).Value;
        expected.Equal(contrast.MedianRatio.Value, name, "ratio");
        expected.Equal(contrast.MedianRatio.Interval.Lower, name, "lower");
        expected.Equal(contrast.MedianRatio.Interval.Upper, name, "upper");
        expected.Equal(contrast.LikelihoodRatio, name, "likelihood_ratio");
        expected.Equal(contrast.PValue, name, "p");
    }

    [Fact] // Definition: a set against itself has ratio 1 and gains nothing from parameters of its own.
    public void A_set_against_itself_shows_nothing()
    {
        var lives = ReferenceCase.Load("crack-inspections").Lives();
        var contrast = LifeContrast.Estimate(LifeDistribution.Weibull, lives, lives).Value;
        Assert.Equal(1, contrast.MedianRatio.Value, 9);
        Assert.Equal(0, contrast.LikelihoodRatio, 6);
        Assert.Equal(1, contrast.PValue, 6);
    }

    [Fact] // Definition: ages of one set doubled double the ratio and its limits, and swapping the sets inverts them.
    public void Ages_rescale_and_sides_swap()
    {
        var lives = ReferenceCase.Load("crack-inspections").Lives();
        Life[] doubled = [.. lives.Select(l => new Life(2 * l.Lower, 2 * l.Upper, 2 * l.Entry, l.Count))];
        var plain = LifeContrast.Estimate(LifeDistribution.Weibull, lives, lives).Value.MedianRatio.Interval;
        var there = LifeContrast.Estimate(LifeDistribution.Weibull, doubled, lives).Value.MedianRatio.Interval;
        var back = LifeContrast.Estimate(LifeDistribution.Weibull, lives, doubled).Value.MedianRatio.Interval;
        Assert.Equal(2 * plain.Lower, there.Lower, 6);
        Assert.Equal(2 * plain.Upper, there.Upper, 6);
        Assert.Equal(1 / there.Upper, back.Lower, 6);
    }

    [Fact]
    public void A_side_without_failures_gives_the_reason()
    {
        var lives = ReferenceCase.Load("crack-inspections").Lives();
        Assert.False(LifeContrast.Estimate(LifeDistribution.Weibull, lives, [Life.GoodAt(100)]).IsEstimated);
    }
}
