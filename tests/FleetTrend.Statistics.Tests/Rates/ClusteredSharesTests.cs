using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

/// <summary>Shares of few things on units that may differ.</summary>
public sealed class ClusteredSharesTests
{
    // With one thing a unit, the exact limits of Clopper and Pearson 1934, by R's binom.test. By hand: none of 30 on ten units of three tells as much as
    // none of ten, so that the upper limit is 1 - 0.025^(1/10); two of two on one unit as much as one of one: 0.025 to 1.
    [Fact]
    public void Things_on_one_unit_count_as_one()
    {
        var exact = ReferenceCase.Load("binomial-exact");
        var (events, trials) = (exact.Counts("events"), exact.Counts("trials"));
        var single = events
            .Select((e, k) => ClusteredShares.Estimate([.. Enumerable.Range(0, trials[k]).Select(i => new ClusterCount(i < e ? 1 : 0, 1))]).Value).ToList();
        exact.Equal(single.Select(s => s.Interval.Lower), "lower");
        exact.Equal(single.Select(s => s.Interval.Upper), "upper");
        Assert.Equal(5 / 25.0, single[0].Value);
        var none = ClusteredShares.Estimate([.. Enumerable.Repeat(new ClusterCount(0, 3), 10)]).Value;
        Assert.Equal((0.0, 0.0), (none.Value, none.Interval.Lower));
        Assert.Equal(1 - Math.Pow(0.025, 0.1), none.Interval.Upper, 9);
        var both = ClusteredShares.Estimate([new ClusterCount(2, 2), new ClusterCount(0, 0)]).Value;
        Assert.Equal((1.0, 1.0), (both.Value, both.Interval.Upper));
        Assert.Equal(0.025, both.Interval.Lower, 9);
    }

    // By hand: of 14 nine and of 11 one, one a unit: P(at most one of the ten events among 11 of 25) =
    // [C(14,10) C(11,0) + C(14,9) C(11,1)] / C(25,10) = (1001 + 2002 * 11) / 3268760; the smallest is that of all ten among the 11,
    // C(11,10) C(14,0) / C(25,10) = 11 / 3268760. Twice each.
    [Fact]
    public void Two_shares_are_compared_exactly()
    {
        var (p, smallest) = ClusteredShares.Compare(Single(9, 14), Single(1, 11)).Value;
        Assert.Equal(2 * (1001 + (2002 * 11)) / 3268760.0, p, 12);
        Assert.Equal(2 * 11 / 3268760.0, smallest, 12);
        Assert.Equal(p, ClusteredShares.Compare(Single(1, 11), Single(9, 14)).Value.PValue, 12);
    }

    // By hand: 8 of 8 on one unit and 0 of 8 on another are one of one and none of one: P(the one event is the first) = 1/2, and nothing smaller can be.
    [Fact]
    public void One_unit_against_one_shows_nothing()
    {
        var (p, smallest) = ClusteredShares.Compare([new ClusterCount(8, 8)], [new ClusterCount(0, 8)]).Value;
        Assert.Equal((1.0, 1.0), (p, smallest));
    }

    [Fact]
    public void Nothing_looked_at_and_nothing_found_give_the_reason()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, ClusteredShares.Estimate([]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, ClusteredShares.Compare([], Single(1, 2)).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, ClusteredShares.Compare(Single(0, 2), Single(0, 3)).Reason!.Kind);
    }

    private static ClusterCount[] Single(int events, int trials) => [.. Enumerable.Range(0, trials).Select(i => new ClusterCount(i < events ? 1 : 0, 1))];
}
