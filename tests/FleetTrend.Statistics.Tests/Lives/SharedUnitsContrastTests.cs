using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Two sets of lives on units that have lives in both.</summary>
public sealed class SharedUnitsContrastTests
{
    [Theory] // R: survreg of the package survival for the fits, the one-step jackknife over eight units from derivatives.
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Units_with_lives_in_both_sets_equal_R(LifeDistribution distribution, string name)
    {
        var expected = ReferenceCase.Load("shared-units-contrast");
        var contrast = SharedUnitsContrast.Estimate(distribution, Units()).Value;
        expected.Equal(contrast.Ratio.Value, name, "ratio");
        expected.Equal(contrast.Ratio.Interval.Lower, name, "lower");
        expected.Equal(contrast.Ratio.Interval.Upper, name, "upper");
        expected.Equal(contrast.PValue, name, "p");
        expected.Equal(contrast.DesignEffect, name, "design_effect");
        expected.Equal(contrast.Shape, name, "shape");
        Assert.Equal(6, contrast.DegreesOfFreedom);
    }

    // By hand: every unit has twice its own life in the second set, whatever the unit's own, so that leaving any out leaves the ratio 1/2: with lives known
    // exactly no scatter is left, and what units do not share cancels.
    [Fact]
    public void What_a_unit_does_to_both_sets_cancels()
    {
        List<UnitLives> units = [.. new[] { 1.0, 1.5, 4, 0.4, 2.2 }.Select(own => new UnitLives(
            [Life.FailedAt(100 * own), Life.FailedAt(180 * own)], [Life.FailedAt(200 * own), Life.FailedAt(360 * own)]))];
        var contrast = SharedUnitsContrast.Estimate(LifeDistribution.Weibull, units).Value;
        Assert.Equal(0.5, contrast.Ratio.Value, 6);
        Assert.Equal(0.5, contrast.Ratio.Interval.Lower, 5);
        Assert.Equal(0.5, contrast.Ratio.Interval.Upper, 5);
        var apart = LifeContrast.Estimate(LifeDistribution.Weibull, [.. units.Select(u => u.First)], [.. units.Select(u => u.Second)]).Value;
        Assert.True(apart.MedianRatio.Interval.Upper > 1); // the same taken for ten units
    }

    [Fact] // Definition: ages of the first set doubled double the ratio and its limits, and swapping the sets inverts them.
    public void Ages_rescale_and_sides_swap()
    {
        var plain = SharedUnitsContrast.Estimate(LifeDistribution.Weibull, Units()).Value.Ratio.Interval;
        var there = SharedUnitsContrast.Estimate(LifeDistribution.Weibull,
            [.. Units().Select(u => u with { First = [.. u.First.Select(l => new Life(2 * l.Lower, 2 * l.Upper))] })]).Value.Ratio.Interval;
        var back = SharedUnitsContrast.Estimate(LifeDistribution.Weibull, [.. Units().Select(u => new UnitLives(u.Second, u.First))]).Value.Ratio.Interval;
        Assert.Equal(2 * plain.Lower, there.Lower, 5);
        Assert.Equal(2 * plain.Upper, there.Upper, 5);
        Assert.Equal(1 / plain.Upper, back.Lower, 6);
    }

    [Fact]
    public void Too_little_gives_the_reason()
    {
        var units = Units();
        Assert.Equal(NotEstimableKind.NoEvents, SharedUnitsContrast.Estimate(LifeDistribution.Weibull, [new([Life.GoodAt(100)], units[0].Second)])
            .Reason!.Kind);
        UnitLives all = new([.. units.SelectMany(u => u.First)], [.. units.SelectMany(u => u.Second)]);
        Assert.Equal(NotEstimableKind.NoInformation, SharedUnitsContrast.Estimate(LifeDistribution.Weibull, [all, new([], [])]).Reason!.Kind);
        // Every failure of the first set is on one unit: without it nothing is left to compare.
        List<UnitLives> carried = [.. units.Select(u => u with { First = [Life.GoodAt(40)] }), new UnitLives(all.First, [])];
        Assert.Equal(NotEstimableKind.TooFewEvents, SharedUnitsContrast.Estimate(LifeDistribution.Weibull, carried).Reason!.Kind);
    }

    internal static List<UnitLives> Units()
    {
        var source = ReferenceCase.Load("breast-cosmesis-two-arms");
        var arm = source.Counts("arm");
        Life[][] arms = [source.Lives(i => arm[i] == 1), source.Lives(i => arm[i] == 2)];
        return [.. Enumerable.Range(0, 8).Select(unit => new UnitLives(Of(arms[0], unit), Of(arms[1], unit)))];

        static Life[] Of(Life[] lives, int unit) => [.. lives.Where((_, i) => (i + 1) / 6 % 8 == unit)];
    }
}
