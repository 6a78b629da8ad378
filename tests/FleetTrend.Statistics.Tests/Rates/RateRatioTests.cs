using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class RateRatioTests
{
    [Fact] // R 4.2.2 stats::poisson.test and pbinom; reference/poisson-two-sample-exact.
    public void Ratios_intervals_and_tests_equal_the_reference()
    {
        var reference = ReferenceCase.Load("poisson-two-sample-exact");
        var (first, second) = (reference.Counts("first"), reference.Counts("second"));
        var (firstHours, secondHours) = (reference.Column("first_hours"), reference.Column("second_hours"));
        var ratios = first.Select((_, i) => RateRatio.Estimate(first[i], firstHours[i], second[i], secondHours[i]).Value).ToList();
        reference.Equal(ratios.Select(r => r.Ratio), "ratio");
        reference.Equal(ratios.Select(r => r.Interval.Lower), "lower");
        reference.Equal(ratios.Select(r => r.Interval.Upper), "upper");
        reference.Equal(ratios.Select(r => r.TwoSidedPValue), "p_two_sided");
        reference.Equal(ratios.Select(r => r.UpperPValue), "p_upper");
        reference.Equal(ratios.Select(r => r.LowerPValue), "p_lower");
        reference.Equal(ratios.Select(r => r.MidUpperPValue), "mid_p_upper");
        reference.Equal(ratios.Select(r => r.ScoreStatistic), "score");
    }

    [Fact] // By hand: 6 of 8 findings on a quarter of the hours, P(Bin(8, 1/4) >= 6) = (28*9 + 8*3 + 1) / 65536 = 277 / 65536.
    public void Six_of_eight_on_a_quarter_of_the_hours()
    {
        var ratio = RateRatio.Estimate(6, 250, 2, 750).Value;
        Assert.Equal(277.0 / 65536, ratio.UpperPValue, 12);
    }

    [Fact] // Swapping the groups turns the ratio over.
    public void Swapped_groups_give_the_inverse()
    {
        var there = RateRatio.Estimate(9, 1200, 4, 900).Value;
        var back = RateRatio.Estimate(4, 900, 9, 1200).Value;
        Assert.Equal(there.Ratio, 1 / back.Ratio, 12);
        Assert.Equal(there.Interval.Lower, 1 / back.Interval.Upper, 10);
        Assert.Equal(there.TwoSidedPValue, back.TwoSidedPValue, 12);
    }

    [Fact]
    public void Two_empty_groups_are_a_typed_reason()
    {
        Assert.Equal(NotEstimableKind.NoEvents, RateRatio.Estimate(0, 10, 0, 20).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, RateRatio.Estimate(1, 10, 0, 0).Reason?.Kind);
    }
}
