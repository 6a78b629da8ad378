using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class WeightedPoissonIntervalTests
{
    // Births by age of mother in five orders, weights that make one standard population of them; R's epitools, ageadjust.direct.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Limits_equal_the_reference_and_the_published_table(int order)
    {
        var reference = ReferenceCase.Load("fay-feuer-birth-order");
        var (events, weights) = (reference.Column($"events_{order}"), reference.Column($"weight_{order}"));
        var limits = WeightedPoissonInterval.Estimate([.. events.Select((e, i) => new WeightedCount((long)e, weights[i]))]);
        Assert.Equal(reference.ExpectedAll("lower")[order - 1], limits.Lower, 1e-7);
        Assert.Equal(reference.ExpectedAll("upper")[order - 1], limits.Upper, 1e-7);
        Assert.Equal(reference.PublishedAll("lower")[order - 1], Math.Round(limits.Lower, 1));
        Assert.Equal(reference.PublishedAll("upper")[order - 1], Math.Round(limits.Upper, 1));
    }

    [Theory] // By the formula: with one weight y²/v is the count and v/y the weight, however the count is split up.
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(14)]
    public void One_weight_gives_the_exact_limits_times_it(int events)
    {
        var exact = GarwoodInterval.Estimate(events, 0.9);
        var limits = WeightedPoissonInterval.Estimate([new WeightedCount(events / 2, 0.07), new WeightedCount(events - (events / 2), 0.07)], 0.9);
        Assert.Equal(0.07 * exact.Lower, limits.Lower, 12);
        Assert.Equal(0.07 * exact.Upper, limits.Upper, 12);
    }

    [Fact] // By hand: no event leaves shape 1 and the largest weight as scale, so that the upper limit is -3 ln(0.025).
    public void No_event_leaves_the_largest_weight()
    {
        var limits = WeightedPoissonInterval.Estimate([new WeightedCount(0, 0.5), new WeightedCount(0, 3)]);
        Assert.Equal(0, limits.Lower);
        Assert.Equal(-3 * Math.Log(0.025), limits.Upper, 10);
    }

    [Theory] // A change of units rescales both limits; squares of such weights would leave the range of numbers.
    [InlineData(1e-200)]
    [InlineData(1e200)]
    public void Units_rescale(double unit)
    {
        var here = WeightedPoissonInterval.Estimate([new WeightedCount(3, 0.5), new WeightedCount(8, 0.2)]);
        var there = WeightedPoissonInterval.Estimate([new WeightedCount(3, 0.5 * unit), new WeightedCount(8, 0.2 * unit)]);
        Assert.Equal(1, there.Lower / unit / here.Lower, 12);
        Assert.Equal(1, there.Upper / unit / here.Upper, 12);
    }

    [Fact]
    public void Impossible_input_is_refused()
    {
        Assert.Throws<ArgumentException>(() => WeightedPoissonInterval.Estimate([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => WeightedPoissonInterval.Estimate([new WeightedCount(1, 1)], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedCount(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedCount(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedCount(1, double.NaN));
    }
}
