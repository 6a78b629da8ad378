using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class LeaveOneOutTestTests
{
    [Fact] // Constructed; binomials convolved in R, reference/leave-one-out-three-strata.
    public void Three_strata_equal_the_convolution_in_R()
    {
        var reference = ReferenceCase.Load("leave-one-out-three-strata");
        var test = LeaveOneOutTest.Test(Strata(reference));
        Assert.Equal(["A", "B", "C", "D", "E"], test.Standings.Select(s => s.Unit));
        reference.Equal(test.Standings.Select(s => (double)s.Observed), "observed");
        reference.Equal(test.Standings.Select(s => s.Expected), "expected");
        reference.Equal(test.Standings.Select(s => s.UpperPValue), "upper");
        reference.Equal(test.Standings.Select(s => s.LowerPValue), "lower");
    }

    [Fact] // The same case: the stratum that drives unit D comes first, with its own exact chance.
    public void The_driving_stratum_comes_first()
    {
        var reference = ReferenceCase.Load("leave-one-out-three-strata");
        var driver = LeaveOneOutTest.Test(Strata(reference)).Standings.Single(s => s.Unit == "D").Contributions[0];
        Assert.Equal("riser-1", driver.Stratum);
        reference.Equal(driver.Expected, "riser_1_of_D", "expected");
        reference.Equal(driver.UpperPValue, "riser_1_of_D", "upper");
    }

    [Fact] // By hand: 6 of 8 findings on a quarter of the hours, P(Bin(8, 1/4) >= 6) = 277 / 65536; at the others' rate, 2/3.
    public void Six_of_eight_on_a_quarter_of_the_hours()
    {
        var stratum = new NormStratum("one", [new("N1", 6, 250), new("N2", 2, 500), new("N3", 0, 250)]);
        var standing = LeaveOneOutTest.Test([stratum]).Standings[0];
        Assert.Equal(277.0 / 65536, standing.UpperPValue, 14);
        Assert.Equal(2.0 / 3, standing.Expected, 14);
    }

    [Fact] // Definition: with one stratum the chances at and above, and at and below, overlap in the count seen alone.
    public void Upper_and_lower_overlap_in_the_count_seen()
    {
        var standing = LeaveOneOutTest.Test([new NormStratum("one", [new("N1", 3, 100), new("N2", 4, 300)])]).Standings[0];
        var seen = new MathNet.Numerics.Distributions.Binomial(0.25, 7).Probability(3);
        Assert.Equal(1 + seen, standing.UpperPValue + standing.LowerPValue, 12);
    }

    [Fact]
    public void A_unit_without_others_or_hours_cannot_be_compared()
    {
        var test = LeaveOneOutTest.Test([new NormStratum("one", [new("N1", 3, 100)]), new NormStratum("two", [new("N2", 0, 0), new("N3", 1, 10)])]);
        Assert.Empty(test.Standings);
        Assert.Equal(["N1", "N2", "N3"], test.NotComparable);
    }

    [Theory] // By hand: binomial chances far out. All 60 on a tenth of the hours, 10^-60; 49 or 50 of 50 on a thousandth, 50 (0.999) 10^-147 + 10^-150.
    [InlineData(60, 0, 1.0, 9.0, 1e-60)]
    [InlineData(49, 1, 1.0, 999.0, 4.9951e-146)]
    public void A_tiny_chance_keeps_its_digits(int own, int others, double hours, double othersHours, double chance)
    {
        var standing = LeaveOneOutTest.Test([new NormStratum("one", [new("N1", own, hours), new("N2", others, othersHours)])]).Standings[0];
        Assert.Equal(1, standing.UpperPValue / chance, 1e-9);
        Assert.Equal(1, standing.Contributions[0].UpperPValue / chance, 1e-9);
    }

    [Fact] // By hand: over two strata all events on one unit, (1/10)^30 (1/4)^20; the other unit had none of them, the same chance below.
    public void A_tiny_chance_over_two_strata_keeps_its_digits()
    {
        var test = LeaveOneOutTest.Test(
            [new NormStratum("one", [new("N1", 30, 1), new("N2", 0, 9)]), new NormStratum("two", [new("N1", 20, 1), new("N2", 0, 3)])]);
        var chance = 1e-30 * Math.Pow(0.25, 20);
        Assert.Equal(1, test.Standings[0].UpperPValue / chance, 1e-9);
        Assert.Equal(1, test.Standings[1].LowerPValue / chance, 1e-9);
    }

    [Fact] // By hand: one less than all, over two strata: all of one and all but one of the other, either way round, and all.
    public void A_tiny_chance_of_all_but_one_over_two_strata()
    {
        var test = LeaveOneOutTest.Test(
            [new NormStratum("one", [new("N1", 30, 1), new("N2", 0, 9)]), new NormStratum("two", [new("N1", 19, 1), new("N2", 1, 3)])]);
        var all = 1e-30 * Math.Pow(0.25, 20);
        Assert.Equal(1, test.Standings[0].UpperPValue / (all * (1 + (30 * 9) + (20 * 3))), 1e-9);
    }

    [Fact] // Central limit: a million events, a unit two standard deviations high has an upper tail of about 0.0228.
    public void A_million_events()
    {
        var stratum = new NormStratum("one", [new("N1", 100_600, 100), new("N2", 899_400, 900)]);
        Assert.InRange(LeaveOneOutTest.Test([stratum]).Standings[0].UpperPValue, 0.0226, 0.0230);
    }

    [Fact]
    public void A_unit_twice_in_a_stratum_is_refused() =>
        Assert.Throws<ArgumentException>(() => new NormStratum("one", [new("N1", 0, 1), new("N1", 0, 1)]));

    private static List<NormStratum> Strata(ReferenceCase reference)
    {
        var (stratum, unit) = (reference.Text("stratum"), reference.Text("unit"));
        var (events, hours) = (reference.Counts("events"), reference.Column("hours"));
        return [.. Enumerable.Range(0, unit.Length).GroupBy(i => stratum[i])
            .Select(g => new NormStratum(g.Key, [.. g.Select(i => new UnitCount(unit[i], events[i], hours[i]))]))];
    }
}
