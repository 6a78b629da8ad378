using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class EarlyFailuresTests
{
    private static readonly LifeModel WearOut = new(LifeDistribution.Weibull, 900, 3);

    [Theory] // By hand: looked at once at the age, the likelihood is p^2 (1 - p)^8, largest at p = 2/10, whatever the course of the hazard.
    [InlineData(LifeDistribution.Weibull, 900, 3)]
    [InlineData(LifeDistribution.Lognormal, 500, 2)]
    [InlineData(LifeDistribution.Exponential, 77, 1)]
    public void Seen_at_one_look_the_chance_is_the_share(LifeDistribution distribution, double scale, double shape)
    {
        var early = EarlyFailures.Estimate(new LifeModel(distribution, scale, shape), Single(2, 8), 100).Value;
        Assert.Equal(0.2, early.Chance.Value, 9);
        Assert.Equal(2, early.Failures, 9);
    }

    [Fact] // By hand: exact ages 40 and 90 h, one life good at 100 h and one at 50 h, constant hazard: 2 failures in 40 + 90 + 100 + 50 = 280 h.
    public void With_exact_ages_it_is_failures_over_hours()
    {
        Life[][] units = [[Life.FailedAt(40), Life.FailedAt(90)], [Life.GoodAt(700), Life.GoodAt(50)]];
        var early = EarlyFailures.Estimate(new LifeModel(LifeDistribution.Exponential, 900), units, 100).Value;
        Assert.Equal(1 - Math.Exp(-100 * 2 / 280.0), early.Chance.Value, 9);
    }

    // By hand: constant hazard r to 100 h and none of the distribution's beyond; a failure in (50, 150] is early with chance (1 - e^-50r)/(1 - e^-50r-d).
    [Fact]
    public void A_failure_across_the_age_counts_by_its_chance_of_being_early()
    {
        Life[][] units = [[Life.FailedBetween(50, 150)], [Life.GoodAt(100)]];
        var model = new LifeModel(LifeDistribution.Exponential, 200);
        var early = EarlyFailures.Estimate(model, units, 100).Value;
        var hazard = -Math.Log(1 - early.Chance.Value) / 100;
        // The derivative of ln(1 - e^(-50r - 50/200)) - 50r - 100r in r is zero at the maximum: 1/(e^(50r + 1/4) - 1) = 3.
        Assert.Equal(Math.Max(0, (Math.Log(4 / 3.0) - 0.25) / 50), hazard, 6);
    }

    [Fact] // 3.6889 is the upper 97.5 % limit of a count of none (Garwood 1936); twenty lives passed the whole early hazard.
    public void Where_none_failed_there_is_an_upper_limit()
    {
        var early = EarlyFailures.Estimate(WearOut, Single(0, 20), 100).Value;
        Assert.Equal((0.0, 0.0), (early.Chance.Value, early.Chance.Interval.Lower));
        Assert.Equal(1 - Math.Exp(-3.6889 / 20), early.Chance.Interval.Upper, 4);
    }

    [Fact] // The distribution's own tail is another matter: it gives 0.14 % by 100 h, and the lives say a quarter.
    public void The_tail_of_the_law_does_not_matter() =>
        Assert.Equal(0.25, EarlyFailures.Estimate(WearOut, Single(5, 15), 100).Value.Chance.Value, 9);

    [Fact]
    public void Lives_that_joined_later_say_nothing() => Assert.Equal(
        NotEstimableKind.NoInformation, EarlyFailures.Estimate(WearOut, [[Life.FailedBetween(300, 400, 150)]], 100).Reason!.Kind);

    // By hand: F = 5/20 among the first, so 0.2877 hazard each; a failed one passed 1 - 3 x 0.2877 of its 0.2877 on average, so 5 failures over
    // 5/0.2877 = 17.380 units of the whole early hazard; 20 among the second. Share of the first 17.380/37.380. A failed unit departs by
    // 3 x 0.2877 = 0.8630 from its share, a good one by -0.2877: squares 5 x 0.7448 + 15 x 0.0828 = 4.966, times 20/19, over 5 failures: 1.0455.
    [Fact]
    public void Five_against_none_equals_the_hand_derivation()
    {
        var contrast = Compare(Single(5, 15), Single(0, 20));
        var hazard = -Math.Log(0.75);
        var share = 5 / hazard / ((5 / hazard) + 20);
        var spread = ((5 * Math.Pow(3 * hazard, 2)) + (15 * hazard * hazard)) * 20 / 19 / 5;
        Assert.InRange(spread, 1.045, 1.046);
        Assert.Equal(Math.Pow(share, 5 / spread), contrast.PValue, 9); // twice the half of the chance of all on one side
        Assert.True(double.IsPositiveInfinity(contrast.Ratio.Value));
        Assert.True(double.IsPositiveInfinity(contrast.Ratio.Interval.Upper));
        Assert.True(contrast.Ratio.Interval.Lower > 1);
    }

    [Fact] // Definition: sides swapped give the inverse ratio and the same chance; the interval leaves out 1 exactly where the test calls.
    public void Sides_swap_and_the_interval_agrees_with_the_test()
    {
        var (there, back) = (Compare(Single(9, 31), Single(3, 57)), Compare(Single(3, 57), Single(9, 31)));
        Assert.Equal(there.PValue, back.PValue, 9);
        Assert.Equal(there.Ratio.Value, 1 / back.Ratio.Value, 9);
        Assert.Equal(there.Ratio.Interval.Lower, 1 / back.Ratio.Interval.Upper, 6);
        Assert.False(Compare(Single(9, 31), Single(3, 57), 1 - (there.PValue * 1.0001)).Ratio.Interval.Contains(1));
        Assert.True(Compare(Single(9, 31), Single(3, 57), 1 - (there.PValue * 0.9999)).Ratio.Interval.Contains(1));
    }

    [Fact] // Ten failures on one aircraft say less than ten on ten: what is independent is the aircraft.
    public void Failures_on_one_unit_count_for_less()
    {
        Life[][] one = [[.. Enumerable.Repeat(Life.FailedBetween(0, 100), 10)], .. Single(0, 30)];
        Assert.InRange(Compare(one, Single(0, 40)).PValue, 0.2, 1);
        Assert.InRange(Compare(Single(10, 30), Single(0, 40)).PValue, 0, 0.001);
    }

    [Fact]
    public void None_on_either_side_is_no_comparison()
    {
        var none = EarlyFailures.Estimate(WearOut, Single(0, 20), 100).Value;
        Assert.Equal(NotEstimableKind.NoEvents, EarlyFailureContrast.Compare(none, none).Reason!.Kind);
        Assert.Throws<ArgumentException>(() => EarlyFailureContrast.Compare(none, EarlyFailures.Estimate(WearOut, Single(0, 20), 50).Value));
    }

    /// <summary>Units of one life each, looked at once at 100 h.</summary>
    private static Life[][] Single(int failed, int good) =>
        [.. Enumerable.Repeat<Life[]>([Life.FailedBetween(0, 100)], failed), .. Enumerable.Repeat<Life[]>([Life.GoodAt(100)], good)];

    private static EarlyFailureContrast Compare(Life[][] first, Life[][] second, double confidence = 0.95) => EarlyFailureContrast.Compare(
        EarlyFailures.Estimate(WearOut, first, 100, confidence).Value, EarlyFailures.Estimate(WearOut, second, 100, confidence).Value, confidence).Value;
}
