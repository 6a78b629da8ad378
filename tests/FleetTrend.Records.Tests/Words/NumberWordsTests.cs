using FleetTrend.Records.Words;

namespace FleetTrend.Records.Tests.Words;

public sealed class NumberWordsTests
{
    [Theory] // A limit on the other side of 1 never reads as 1.0.
    [InlineData(1.019, "1.02")]
    [InlineData(0.997, "0.997")]
    [InlineData(1.0003, "1.0003")]
    [InlineData(0.99999, "just below 1")]
    [InlineData(1, "1.0")]
    [InlineData(0.88, "0.88")]
    [InlineData(1.06, "1.1")]
    [InlineData(3e-6, "under 0.0001")]
    public void A_ratio_stays_on_its_side_of_one(double ratio, string words) => Assert.Equal(words, NumberWords.BesideOne(ratio));

    [Fact]
    public void A_share_next_to_nothing_is_not_nothing() =>
        Assert.Equal(["0 %", "under 0.01 %", "0.01 %"], new[] { 0, 0.00004, 0.0001 }.Select(NumberWords.Percent));

    [Fact]
    public void A_chosen_share_is_told_in_full() =>
        Assert.Equal(["95 %", "97.5 %", "99.9 %"], new[] { 0.95, 0.975, 0.999 }.Select(NumberWords.PercentInFull));
}
