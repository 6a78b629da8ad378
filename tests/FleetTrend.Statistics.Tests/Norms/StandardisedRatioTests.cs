using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class StandardisedRatioTests
{
    [Fact] // Constructed; binomials convolved and the tails solved in R, reference/leave-one-out-three-strata.
    public void Three_strata_equal_the_limits_solved_in_R()
    {
        var reference = ReferenceCase.Load("leave-one-out-three-strata");
        var (stratum, unit) = (reference.Text("stratum"), reference.Text("unit"));
        var (events, hours) = (reference.Counts("events"), reference.Column("hours"));
        var strata = Enumerable.Range(0, unit.Length).GroupBy(i => stratum[i]).Select(g =>
            new NormStratum(g.Key, [.. g.Select(i => new UnitCount(unit[i], events[i], hours[i]))])).ToList();
        var ratios = LeaveOneOutTest.Test(strata).Standings.Select(s => StandardisedRatio.Estimate(s).Value).ToList();
        reference.Equal(ratios.Select(r => r.Ratio), "ratio");
        reference.Equal(ratios.Select(r => r.Interval.Lower), "ratio_lower");
        reference.Equal(ratios.Select(r => r.Interval.Upper), "ratio_upper");
    }

    [Theory] // Definition: with one stratum it is the exact interval of a ratio of two Poisson rates.
    [InlineData(3, 100, 4, 300)]
    [InlineData(0, 250, 12, 4000)]
    [InlineData(5, 80, 0, 900)]
    [InlineData(50, 100, 10, 9000)]
    [InlineData(1, 0.1, 3000, 100_000)]
    public void One_stratum_equals_the_ratio_of_two_rates(int own, double ownHours, int others, double othersHours)
    {
        var standing = LeaveOneOutTest.Test([new NormStratum("one", [new("a", own, ownHours), new("b", others, othersHours)])]).Standings[0];
        var ratio = StandardisedRatio.Estimate(standing, 0.9).Value;
        var direct = RateRatio.Estimate(own, ownHours, others, othersHours, 0.9).Value;
        Close(direct.Ratio, ratio.Ratio);
        Close(direct.Interval.Lower, ratio.Interval.Lower);
        Close(direct.Interval.Upper, ratio.Interval.Upper);
    }

    [Fact] // By hand: 3 of 3 in two strata where the unit has half the hours: (r/(1+r))^3 = 0.025, r = 1/(0.025^(-1/3) - 1).
    public void Where_the_others_had_nothing_only_a_lower_limit_exists()
    {
        var standing = LeaveOneOutTest.Test(
        [
            new NormStratum("one", [new("a", 2, 10), new("b", 0, 10)]),
            new NormStratum("two", [new("a", 1, 70), new("b", 0, 70)]),
        ]).Standings[0];
        var ratio = StandardisedRatio.Estimate(standing).Value;
        Assert.Equal(double.PositiveInfinity, ratio.Ratio);
        Assert.Equal(double.PositiveInfinity, ratio.Interval.Upper);
        Close(1 / (Math.Pow(0.025, -1.0 / 3) - 1), ratio.Interval.Lower);
    }

    [Fact]
    public void Where_nobody_had_an_event_there_is_no_ratio()
    {
        var standing = LeaveOneOutTest.Test([new NormStratum("one", [new("a", 0, 10), new("b", 0, 10)])]).Standings[0];
        Assert.Equal(NotEstimableKind.NoEvents, StandardisedRatio.Estimate(standing).Reason!.Kind);
    }

    private static void Close(double expected, double actual) =>
        Assert.True(expected.Equals(actual) || Math.Abs(actual - expected) <= 1e-8 * Math.Abs(expected), $"{expected:R} {actual:R}");
}
