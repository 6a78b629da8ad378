using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;

namespace FleetTrend.Statistics.Tests.Effects;

public sealed class EffectTests
{
    private const int Many = 1_000_000_000;
    private static readonly ChangePrior FiveTimes = new() { Ratios = [5], RatioWeights = [1], WindowPeriods = 1 };
    private static readonly RateSpread Spread = new(4);

    // One location with rate one, and so many findings of the others that nothing is open about it: expected is exposure, and nothing moves.
    private static EffectNorm Known { get; } = EffectNorm.Estimate([new OthersThere(Many, Many, Many, Many)])!;

    // By hand: k = 4, ratio 5 since day 72 of an action on day 100. Own level: 1 in 2; raised: 3 in 0.5; after: n in 1. With N = 4 + n in all,
    // back: 5^3 (4 + 2 + 5 * 0.5 + 1)^-(4 + N); still: 5^(3 + n) (4 + 2 + 5 * 0.5 + 5)^-(4 + N).
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4)]
    public void Back_over_still_in_closed_form(int after)
    {
        EffectLook[] looks = [new(10, 0, 2, 0, 1), new(90, 0, 0.5, 0, 3), new(130, 0, 0, 1, after)];
        Assert.Equal(-after * Math.Log(5) + (8 + after) * Math.Log(13.5 / 9.5), Log(looks), 3);
    }

    // By hand: the look after the action closes 0.5 on either side. Its factor is 5 * 0.5 + 0.5 = 3 if back, 5 if still; N = 5, sums 7.5 and 9.5.
    [Fact]
    public void A_look_astride_the_action_may_have_found_what_came_before()
    {
        EffectLook[] looks = [new(10, 0, 2, 0, 1), new(90, 0, 0.5, 0, 3), new(130, 0, 0.5, 0.5, 1)];
        Assert.Equal(Math.Log(3.0 / 5) + 9 * Math.Log(13.5 / 11.5), Log(looks), 3);
    }

    [Fact] // By hand: N and E over the dispersion 2: 5^0 ((4 + 9.5 / 2) / (4 + 5.5 / 2))^(4 + 4 / 2).
    public void Bunches_tell_less()
    {
        EffectLook[] looks = [new(10, 0, 2, 0, 1), new(90, 0, 0.5, 0, 3), new(130, 0, 0, 1, 0)];
        Assert.Equal(6 * Math.Log(8.75 / 6.75), Log(looks, Spread with { Dispersion = 2 }), 3);
    }

    [Fact]
    public void Without_a_finding_before_nothing_was_raised() =>
        Assert.Null(ActionOdds.Estimate([new(90, 0, 1, 0, 0), new(130, 0, 0, 1, 0)], Known, 100, [new ChangeScope("whole", [], 1)], Spread, FiveTimes));

    // By hand: k = 4, 5 in 3 before and 1 in 2 after, "fewer" a half: the sum over b in {1/2, 1, 2, 4, 8} of b^6 (1/2) (4 + b (3 + 1))^-(4 + 6),
    // over that of b^6 (4 + b (3 + 2))^-(4 + 6); two such units: each term squared.
    [Fact]
    public void Fewer_over_as_before_in_closed_form()
    {
        EffectLook[] unit = [new(10, 0, 3, 0, 5), new(130, 0, 0, 2, 1)];
        var half = new ChangePrior { Ratios = [2], RatioWeights = [1] };
        double Sum(double factor, double exposure, int units) =>
            new[] { 0.5, 1, 2, 4, 8 }.Sum(b => Math.Pow(Math.Pow(b, 6) * factor * Math.Pow(4 + b * exposure, -10), units));
        Assert.Equal(Math.Log(Sum(0.5, 4, 1) / Sum(1, 5, 1)), PracticeOdds.Log([unit], Known, Spread, half), 3);
        Assert.Equal(Math.Log(Sum(0.5, 4, 2) / Sum(1, 5, 2)), PracticeOdds.Log([unit, unit], Known, Spread, half), 3);
    }

    [Fact] // By hand: others 20 in 100 before, 5 in 50 after, where 10 were expected but for the half finding: (3 + 5) / (3 + 10).
    public void What_changed_for_everybody_is_in_the_norm()
    {
        var norm = EffectNorm.Estimate([new OthersThere(2000, 10_000, 5, 50)])!;
        Assert.Equal(8.0 / 13, norm.Move, 3);
        var look = Assert.Single(norm.Expect([new EffectLook(1, 0, 3, 2, 0)]));
        Assert.Equal((0.6, 0.4), (Math.Round(look.Before, 3), Math.Round(look.After, 3)));
        Assert.Null(EffectNorm.Estimate([new OthersThere(0, 0, 5, 50)]));
    }

    // Others and the touched unit fall to a half alike: no sign that what was done helped. Without the others' fall it is one.
    [Fact]
    public void A_fall_that_the_others_share_is_no_help()
    {
        EffectLook[][] units = [.. Enumerable.Repeat(new EffectLook[] { new(10, 0, 10, 0, 10), new(130, 0, 0, 10, 5) }, 10)];
        double Log(int othersAfter) => PracticeOdds.Log(
            [.. units], EffectNorm.Estimate([new OthersThere(Many, Many, othersAfter, 10_000)])!, Spread, new ChangePrior());
        Assert.True(Log(5_000) < Math.Log(1 / EffectRules.OddsForNoBetter));
        Assert.True(Log(10_000) > Math.Log(EffectRules.OddsForHelpedPractice));
    }

    // Given six in all, the share after is binomial. The limits are where 5 % remain: at or above one of six, and at or below one of six.
    [Fact]
    public void After_over_before_with_its_exact_interval()
    {
        var ratio = EffectRatio.AfterOverBefore(5, 2, 1, 4)!.Value;
        Assert.Equal(0.1, ratio.Value, 12);
        double Share(double at) => at * 4 / (at * 4 + 2);
        Assert.Equal(0.05, 1 - Math.Pow(1 - Share(ratio.Interval.Lower), 6), 9);
        var p = Share(ratio.Interval.Upper);
        Assert.Equal(0.05, Math.Pow(1 - p, 6) + 6 * p * Math.Pow(1 - p, 5), 9);
        Assert.Null(EffectRatio.AfterOverBefore(0, 2, 0, 4));
    }

    [Fact] // Chi-square table: 2.7326 at 0.05 with 8 degrees, 18.307 at 0.95 with 10; half of each (Garwood 1936).
    public void After_over_the_norm_with_its_exact_interval()
    {
        var ratio = EffectRatio.OverNorm(4, 2);
        Assert.Equal(2, ratio.Value);
        Assert.Equal(2.7326 / 4, ratio.Interval.Lower, 4);
        Assert.Equal(18.307 / 4, ratio.Interval.Upper, 4);
    }

    [Theory]
    [InlineData(6.01, 0.9, EffectVerdict.Helped)]
    [InlineData(6.01, 0.89, EffectVerdict.TooEarly)]
    [InlineData(5.99, 9, EffectVerdict.TooEarly)]
    [InlineData(0.101, 9, EffectVerdict.TooEarly)]
    [InlineData(0.099, 0.1, EffectVerdict.NoBetter)]
    public void Verdicts_at_their_limits(double odds, double expected, EffectVerdict verdict) =>
        Assert.Equal(verdict, EffectRules.JudgeAction(Math.Log(odds), expected));

    [Theory]
    [InlineData(20.1, EffectVerdict.Helped)]
    [InlineData(19.9, EffectVerdict.TooEarly)]
    [InlineData(0.099, EffectVerdict.NoBetter)]
    public void Verdicts_on_a_practice_at_their_limits(double odds, EffectVerdict verdict) =>
        Assert.Equal(verdict, EffectRules.JudgePractice(Math.Log(odds)));

    private static double Log(EffectLook[] looks, RateSpread? spread = null) =>
        ActionOdds.Estimate(looks, Known, 100, [new ChangeScope("whole", [], 1)], spread ?? Spread, FiveTimes)!.Log;
}
