using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

/// <summary>One position beside the others of the same units.</summary>
public sealed class PositionContrastTests
{
    [Theory] // r/positions.R: every way to name the positions of each unit, counted one by one; the ratio with each unit left out.
    [InlineData("positions-even-exposure", 4)]
    [InlineData("positions-uneven-exposure", 3)]
    public void Positions_against_R(string folder, int positions)
    {
        var reference = ReferenceCase.Load(folder);
        var (events, exposures) = (reference.Counts("events"), reference.Column("exposure"));
        PositionUnit[] units = [.. Enumerable.Range(0, events.Length / positions)
            .Select(i => new PositionUnit(events[(i * positions)..((i + 1) * positions)], exposures[(i * positions)..((i + 1) * positions)]))];
        PositionContrast[] contrasts = [.. PositionContrast.Estimate(units).Select(c => c!)];
        reference.Equal(contrasts.Select(c => c.Ratio), "ratio");
        reference.Equal(contrasts.Select(c => c.Interval.Lower), "lower");
        reference.Equal(contrasts.Select(c => c.Interval.Upper), "upper");
        reference.Equal(contrasts.Select(c => c.PValue), "p");
        reference.Equal(contrasts.Select(c => c.SmallestPValue), "smallest_p");
    }

    // By hand: five units of three positions. The first had 6, the others 4 on twice the exposure: 3 times. Parts above n x 2/3, below n x 1/3, sums 4 and
    // 4/3. Squares beside the ratio of the others: 3 (4/9)² + (4/3)² + (2/3)² = 2.8148, over 4² = 0.1759, times t of 4 degrees 2.7764: exponent 1.1645, a
    // factor 3.2044. Half of Poisson counts, 5 x 2/9 / (4 x 4/3) = 0.2083, times 1.959964² is less: exponent 0.8946. p: 7 in 2 of 243 ways, 6 in 2 + 1 + 4 +
    // 4 + 2 = 13 (one less on the first, second, ... unit): twice 15/243. The smallest: twice 2/243, all highest.
    [Fact]
    public void Five_units_by_hand()
    {
        var first = PositionContrast.Estimate([Even(2, 1, 0), Even(1, 0, 1), Even(0, 1, 0), Even(1, 0, 0), Even(2, 0, 1)])[0]!;
        Assert.Equal((6, 4, 5), (first.Events, first.OtherEvents, first.Units));
        Assert.Equal(3, first.Ratio, 12);
        Assert.Equal(3.2044, first.Interval.Upper / first.Ratio, 4);
        Assert.Equal(3.2044, first.Ratio / first.Interval.Lower, 4);
        Assert.Equal(30 / 243.0, first.PValue, 12);
        Assert.Equal(4 / 243.0, first.SmallestPValue, 12);
    }

    // By hand: one each on three units, all at the third of four positions: chance (1/4)³, twice that 1/32. The lower limit is where all three there have
    // 2.5 %: odds of the cube root of 0.025 = 0.29240, 0.41323 of them, times three others: 1.2397. Each of the others had none: twice (3/4)³.
    [Fact]
    public void All_at_one_position_has_a_lower_limit_alone()
    {
        var contrasts = PositionContrast.Estimate([Even(0, 0, 1, 0), Even(0, 0, 1, 0), Even(0, 0, 1, 0)]);
        Assert.Equal(double.PositiveInfinity, contrasts[2]!.Ratio);
        Assert.Equal((1.2397, double.PositiveInfinity), (Math.Round(contrasts[2]!.Interval.Lower, 4), contrasts[2]!.Interval.Upper));
        Assert.Equal(1 / 32.0, contrasts[2]!.PValue, 12);
        Assert.Equal((0, 0, 27 / 32.0), (contrasts[0]!.Ratio, contrasts[0]!.Interval.Lower, contrasts[0]!.PValue));
        Assert.Equal(3 * ((1 / Math.Pow(0.025, 1 / 3.0)) - 1), contrasts[0]!.Interval.Upper, 6);
    }

    // By hand: one aircraft with nine at its third cylinder: any of four may be that one, whatever it had. Nothing can be called.
    [Fact]
    public void Many_on_one_unit_are_that_unit_s()
    {
        var third = PositionContrast.Estimate([Even(0, 0, 9, 0)])[2]!;
        Assert.Equal((0.5, 0.5), (third.PValue, third.SmallestPValue));
    }

    [Fact] // Units that differ a hundredfold, and units without an event, change nothing: each is compared with itself.
    public void Levels_of_units_do_not_count()
    {
        PositionUnit[] units = [Even(2, 1), Even(1, 1), Even(3, 0), Even(1, 2)];
        var plain = PositionContrast.Estimate(units)[0]!;
        var scaled = units.Select((u, i) => u with { Exposures = [.. u.Exposures.Select(e => e * Math.Pow(100, i))] });
        Assert.Equal(plain, PositionContrast.Estimate([.. scaled, Even(0, 0)])[0]);
        Assert.Equal(plain, PositionContrast.Estimate([Even(2, 1), Even(1, 1), Even(3, 0), Even(1, 2) with { Times = 1 }, Even(5, 5) with { Times = 0 }])[0]);
    }

    [Fact]
    public void Alike_units_may_stand_once()
    {
        var twice = PositionContrast.Estimate([Even(2, 1, 0), Even(2, 1, 0), Even(0, 1, 1)]);
        Assert.Equal(twice, PositionContrast.Estimate([Even(2, 1, 0) with { Times = 2 }, Even(0, 1, 1)]));
    }

    [Fact]
    public void What_no_unit_tells_is_null()
    {
        Assert.Empty(PositionContrast.Estimate([]));
        Assert.All(PositionContrast.Estimate([Even(0, 0)]), Assert.Null);
        var contrasts = PositionContrast.Estimate([new PositionUnit([1, 1, 0], [500, 500, 0]), new PositionUnit([0, 2, 0], [500, 500, 0])]);
        Assert.Null(contrasts[2]);
        Assert.Equal(1 / 3.0, contrasts[0]!.Ratio, 12);
        Assert.Throws<ArgumentException>(() => PositionContrast.Estimate([Even(1, 0), Even(1, 0, 0)]));
    }

    private static PositionUnit Even(params int[] events) => new(events, [.. events.Select(_ => 500.0)]);
}
